package friction

import (
	"fmt"
	"strconv"
	"strings"

	"completion.example/fluid/flow"
)

// readings are viscometer readings as text: "600=53, 300=34".
type readings []flow.Reading

func (r readings) MarshalText() ([]byte, error) {
	var all []string
	for _, x := range r {
		all = append(all, fmt.Sprintf("%v=%v", x.Speed, x.Dial))
	}
	return []byte(strings.Join(all, ", ")), nil
}

func (r *readings) UnmarshalText(text []byte) error {
	*r = nil
	if strings.TrimSpace(string(text)) == "" {
		return nil
	}
	for pair := range strings.SplitSeq(string(text), ",") {
		speed, dial, _ := strings.Cut(strings.TrimSpace(pair), "=")
		s, err1 := strconv.ParseFloat(strings.TrimSpace(speed), 64)
		d, err2 := strconv.ParseFloat(strings.TrimSpace(dial), 64)
		if err1 != nil || err2 != nil {
			return fmt.Errorf("%q is no reading; write SPEED=DIAL, such as 600=53", strings.TrimSpace(pair))
		}
		*r = append(*r, flow.Reading{Speed: s, Dial: d})
	}
	return nil
}
