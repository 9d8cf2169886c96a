package report

// The parts of a SARIF 2.1.0 log that are written.
type (
	sarifTool struct {
		Driver sarifDriver `json:"driver"`
	}
	sarifDriver struct {
		Name            string      `json:"name"`
		FullName        string      `json:"fullName"`
		Version         string      `json:"version"`
		SemanticVersion string      `json:"semanticVersion,omitempty"`
		Information     string      `json:"informationUri,omitempty"`
		Rules           []sarifRule `json:"rules"`
	}
	sarifRule struct {
		ID      string         `json:"id"`
		Name    string         `json:"name"`
		Short   sarifText      `json:"shortDescription"`
		Full    sarifText      `json:"fullDescription"`
		Help    sarifMarkup    `json:"help"`
		HelpURI string         `json:"helpUri,omitempty"`
		Default sarifLevel     `json:"defaultConfiguration"`
		Bag     map[string]any `json:"properties"`
	}
	sarifText struct {
		Text string `json:"text"`
	}
	sarifMarkup struct {
		Text     string `json:"text"`
		Markdown string `json:"markdown"`
	}
	sarifLevel struct {
		Level string `json:"level"`
	}
	sarifAutomation struct {
		ID string `json:"id"`
	}
	sarifInvocation struct { // and its notifications
		Successful bool `json:"executionSuccessful"`
	}
	sarifNotification struct {
		Level     string          `json:"level"`
		Message   sarifText       `json:"message"`
		Locations []sarifLocation `json:"locations"`
		Rule      *sarifReference `json:"associatedRule,omitempty"`
	}
	sarifReference struct {
		ID    string `json:"id"`
		Index int    `json:"index"`
	}
	sarifResult struct {
		RuleID       string             `json:"ruleId"`
		RuleIndex    int                `json:"ruleIndex"`
		Level        string             `json:"level"`
		Message      sarifText          `json:"message"`
		Locations    []sarifLocation    `json:"locations"`
		Related      []sarifLocation    `json:"relatedLocations,omitempty"`
		Fingerprints map[string]string  `json:"partialFingerprints"`
		Baseline     string             `json:"baselineState,omitempty"`
		Fixes        []sarifFix         `json:"fixes,omitempty"`
		Suppressions []sarifSuppression `json:"suppressions,omitempty"`
		Bag          map[string]any     `json:"properties"`
	}
	sarifSuppression struct {
		Kind          string         `json:"kind"`
		Status        string         `json:"status"`
		Justification string         `json:"justification"`
		Location      *sarifLocation `json:"location,omitempty"` // of the acceptance
	}
	sarifFix struct {
		Description sarifText     `json:"description"`
		Changes     []sarifChange `json:"artifactChanges"`
	}
	sarifChange struct {
		Artifact     sarifArtifact      `json:"artifactLocation"`
		Replacements []sarifReplacement `json:"replacements"`
	}
	sarifReplacement struct {
		Deleted  sarifRegion `json:"deletedRegion"` // empty where something is only inserted
		Inserted sarifText   `json:"insertedContent"`
	}
	sarifLocation struct {
		ID       int            `json:"id,omitempty"`
		Physical sarifPhysical  `json:"physicalLocation"`
		Logical  []sarifLogical `json:"logicalLocations,omitempty"`
		Message  *sarifText     `json:"message,omitempty"`
	}
	sarifPhysical struct {
		Artifact sarifArtifact `json:"artifactLocation"`
		Region   *sarifRegion  `json:"region,omitempty"`
	}
	sarifArtifact struct {
		URI string `json:"uri"`
	}
	sarifRegion struct {
		StartLine   int `json:"startLine"`
		StartColumn int `json:"startColumn"`
		EndLine     int `json:"endLine"`
		EndColumn   int `json:"endColumn"` // the first column past the region
	}
	sarifLogical struct {
		Name string `json:"fullyQualifiedName"`
		Kind string `json:"kind"`
	}
)
