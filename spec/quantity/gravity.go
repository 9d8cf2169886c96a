package quantity

// Gravity is the standard acceleration of free fall in m/s2, exact by definition (NIST
// SP 811, from memory).
const Gravity = 9.80665
