package walk

import (
	"completion.example/valve/sequence/internal/affine"
	"completion.example/valve/sequence/internal/well"
)

func (r *run) axial(w *World, i int) (affine.Line, error) { return affine.Line{}, nil }

func (r *run) hold(w *World, a *well.Action, x affine.Form) error { return nil }

func (k *Walker) pull(w *World, n int) ([]*World, error) { return []*World{w}, nil }

func (k *Walker) land(w *World) error { return nil }
