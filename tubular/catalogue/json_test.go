package catalogue_test

import (
	"encoding/json"
	"testing"

	"github.com/stretchr/testify/require"

	"completion.example/tubular/catalogue"
)

func TestCatalogueReadsBack(t *testing.T) {
	c, err := catalogue.Standard()
	require.NoError(t, err)
	text, err := json.Marshal(c)
	require.NoError(t, err)
	var back catalogue.Catalogue
	require.NoError(t, json.Unmarshal(text, &back))
	require.Equal(t, c.Entries(), back.Entries())
	require.ErrorContains(t, json.Unmarshal([]byte(`[{"kind": "tubing"}]`), &back), "entries[0].Finish")
	require.Error(t, json.Unmarshal([]byte(`5`), &back))
	require.Equal(t, c.Entries(), back.Entries(), "a fault changes nothing")
}
