package source

// withoutWaiting asks for nothing: a path here leads to no pipe.
const withoutWaiting = 0
