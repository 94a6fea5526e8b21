package prose

import (
	"testing"

	"github.com/stretchr/testify/require"
)

func TestHTML(t *testing.T) {
	for text, want := range map[string]string{
		"# A & B\n\nOne\ntwo.\n":                   "<h1>A &amp; B</h1>\n<p>One\ntwo.</p>\n",
		"- *one*\n  and more\n- **two** `a*b*c`":   "<ul>\n<li><em>one</em>\n  and more</li>\n<li><strong>two</strong> <code>a*b*c</code></li>\n</ul>\n",
		"1. a\n2. b\n\nc":                          "<ol>\n<li>a</li>\n<li>b</li>\n</ol>\n<p>c</p>\n",
		"> **Care.** x\n> y":                       "<blockquote>\n<p><strong>Care.</strong> x\ny</p>\n</blockquote>\n",
		"| a | b |\n|---|---|\n| 1 | $x$ |":        "<div class=\"wide\"><table>\n<tr><th>a</th><th>b</th></tr>\n<tr><td>1</td><td><math><mrow><mi>x</mi></mrow></math></td></tr>\n</table></div>\n",
		"```text\ngo < run\n```\n[x](y.html)":      "<pre>go &lt; run</pre>\n<p><a href=\"y.html\">x</a></p>\n",
		"    go run .\n    ls":                     "<pre>go run .\nls</pre>\n",
		"$$p = \\rho g h$$":                        "<div class=\"formula\"><math display=\"block\"><mrow><mi>p</mi><mo>=</mo><mi>ρ</mi><mi>g</mi><mi>h</mi></mrow></math></div>\n",
		"it costs *3 %* of $5\\,\\text{psi}$ here": "<p>it costs <em>3 %</em> of <math><mrow><mn>5</mn><mspace width=\"0.17em\"/><mtext>psi</mtext></mrow></math> here</p>\n",
	} {
		got, err := HTML(text)
		require.NoError(t, err, text)
		require.Equal(t, want, got, text)
	}
}

func TestFormula(t *testing.T) {
	for tex, want := range map[string]string{
		`\frac{a_1}{b^2}`:           "<mfrac><mrow><msub><mi>a</mi><mn>1</mn></msub></mrow><mrow><msup><mi>b</mi><mn>2</mn></msup></mrow></mfrac>",
		`x_i^2-1,000.5`:             "<msubsup><mi>x</mi><mi>i</mi><mn>2</mn></msubsup><mo>−</mo><mn>1,000.5</mn>",
		`\sqrt{2}\le\left(y\right)`: "<msqrt><mrow><mn>2</mn></mrow></msqrt><mo>≤</mo><mrow><mo>(</mo><mrow><mi>y</mi></mrow><mo>)</mo></mrow>",
		`p_\text{in} < \bar{T}`:     "<msub><mi>p</mi><mtext>in</mtext></msub><mo>&lt;</mo><mover><mrow><mi>T</mi></mrow><mo>¯</mo></mover>",
	} {
		got, err := formula(tex, false)
		require.NoError(t, err, tex)
		require.Equal(t, "<math><mrow>"+want+"</mrow></math>", got, tex)
	}
	for _, tex := range []string{`\nothing`, `{a`, `a_`, `\left(a`, `a}`, `\text{a`} {
		_, err := formula(tex, false)
		require.Error(t, err, tex)
	}
}
