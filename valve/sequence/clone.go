package sequence

import "reflect"

// Clone is a copy of the plan that shares nothing with it.
func (p *Plan) Clone() *Plan {
	if p == nil {
		return nil
	}
	q := *p
	copyInto(reflect.ValueOf(&q).Elem())
	q.shares = append([]Choice(nil), p.shares...)
	return &q
}

// copyInto gives everything that a value points to a copy of its own.
func copyInto(v reflect.Value) {
	switch v.Kind() {
	case reflect.Struct:
		for i := range v.NumField() {
			if f := v.Field(i); f.CanSet() {
				copyInto(f)
			}
		}
	case reflect.Slice:
		if v.IsNil() {
			return
		}
		c := reflect.MakeSlice(v.Type(), v.Len(), v.Len())
		reflect.Copy(c, v)
		for i := range c.Len() {
			copyInto(c.Index(i))
		}
		v.Set(c)
	case reflect.Map:
		if v.IsNil() {
			return
		}
		c := reflect.MakeMapWithSize(v.Type(), v.Len())
		for it := v.MapRange(); it.Next(); {
			x := reflect.New(v.Type().Elem()).Elem()
			x.Set(it.Value())
			copyInto(x)
			c.SetMapIndex(it.Key(), x)
		}
		v.Set(c)
	case reflect.Pointer:
		if v.IsNil() {
			return
		}
		c := reflect.New(v.Type().Elem())
		c.Elem().Set(v.Elem())
		copyInto(c.Elem())
		v.Set(c)
	}
}
