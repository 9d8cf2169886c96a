package catalog_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"dryfit/rules"
	"dryfit/rules/catalog"
)

func TestCatalogueIsWellFormed(t *testing.T) {
	require.NoError(t, rules.Validate(catalog.Families()))
}
