package assembly

// Air is still, and resists, where something closes it on both sides. At a face
// that nothing covers, or beside a vented space, it moves with the air of the
// room or outdoors: what resists there is the surface film.

// counted returns the written layers that count, from first up to end, and the
// first vented one, the number of layers if there is none. What lies beyond a
// vented space does not count, nor do air and bays of air open to one side.
func (b *builder) counted() (first, end, vented int) {
	layers := b.spec.Layers
	for vented < len(layers) && (len(layers[vented].Members) > 0 || layers[vented].Item.Vent != Vented) {
		vented++
	}
	end = vented
	for first < end && allAirWritten(&layers[first]) {
		first++
	}
	for first < end && !b.soilCloses(vented) && allAirWritten(&layers[end-1]) {
		end--
	}
	return first, end, vented
}

// soilCloses reports whether the ground closes the outer side.
func (b *builder) soilCloses(vented int) bool {
	return b.setting.Exposure == Soil && vented == len(b.spec.Layers)
}

// allAirWritten reports whether a layer holds nothing but air.
func allAirWritten(l *SpecLayer) bool {
	if len(l.Members) == 0 {
		return l.Item.Kind == Air
	}
	for i := range l.Fill {
		if l.Fill[i].Kind != Air {
			return false
		}
	}
	return true
}

// openPieces returns how many pieces of air at the start and at the end of a fill
// are open to that side.
func openPieces(fill []Item, in bay) (start, end int) {
	for in.openIn && start < len(fill) && fill[start].Kind == Air {
		start++
	}
	for in.openOut && end < len(fill)-start && fill[len(fill)-1-end].Kind == Air {
		end++
	}
	return start, end
}
