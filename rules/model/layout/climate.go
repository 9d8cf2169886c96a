package layout

import (
	"dryfit/rules/kernel/timber"
	"dryfit/spec"
	"dryfit/spec/record"
)

// Climate is the moisture content of the wood, fractions.
type Climate struct {
	Shop     Number
	Dry, Wet Number  // of a season without Fault
	Air      Seasons // of the room
	ShopAir  Air
	Above    RoofSpace

	dryFault, wetFault record.Value[*SeasonFault]
}

// Fault is why nothing can be worked out of a season, "dry" or "wet"; nil where
// all can.
func (k Climate) Fault(season string) *SeasonFault {
	if season == "dry" {
		return k.dryFault.Get()
	}
	return k.wetFault.Get()
}

// Seasons is the air of both seasons.
type Seasons struct{ Dry, Wet Air }

// RoofSpace is the air behind the ceiling.
type RoofSpace struct {
	Table
	Seasons
}

// Air is a temperature and a relative humidity.
type Air struct{ Temperature, Humidity Number }

// Moisture is the moisture content that wood comes to in the air, a fraction;
// errors are those of [timber.EMC].
func (a Air) Moisture() (float64, error) { return timber.EMC(a.Temperature.Get(), a.Humidity.Get()) }

// Swapped reports whether the wood is wetter in the dry season than in the wet
// one. Each season's own figures hold all the same; what asks for the drier or
// the wetter one has none.
func (k Climate) Swapped() bool {
	return k.Fault("dry") == nil && k.Fault("wet") == nil && k.Dry.Get() > k.Wet.Get()
}

// SeasonFault is why nothing can be worked out of a season, at the key to be
// edited: its air is outside what the moisture content is published for.
type SeasonFault struct {
	Key   string
	Cause error
}

// Error is that of its cause.
func (f *SeasonFault) Error() string { return f.Cause.Error() }

func resolveClimate(c *Ceiling) []Fault {
	s := c.spec.Climate
	both := func(s spec.Air, t spec.Air) Seasons { return Seasons{Dry: c.air(s), Wet: c.air(t)} }
	c.Climate = Climate{
		ShopAir: c.air(s.Shop), Air: both(s.Dry, s.Wet),
		Above: RoofSpace{c.table(s.Above.Table), both(s.Above.Dry, s.Above.Wet)},
	}
	moisture := func(key string, a Air) Number {
		return named(c, key+".moisture", func() float64 {
			m, _ := a.Moisture()
			return m
		})
	}
	k := &c.Climate
	k.Shop, k.Dry, k.Wet = moisture("climate.shop", k.ShopAir), moisture("climate.dry", k.Air.Dry), moisture("climate.wet", k.Air.Wet)
	k.dryFault = Derive(c, func() *SeasonFault { return k.Air.Dry.fault("climate.dry") })
	k.wetFault = Derive(c, func() *SeasonFault { return k.Air.Wet.fault("climate.wet") })
	if _, err := k.ShopAir.Moisture(); err != nil {
		return []Fault{{"climate.shop", err.Error()}} // without it there is no mass
	}
	return nil
}

// fault is what is wrong with the air of a season.
func (a Air) fault(key string) *SeasonFault {
	if _, err := a.Moisture(); err != nil {
		return &SeasonFault{key, err}
	}
	return nil
}

func (c *Ceiling) air(s spec.Air) Air { return Air{si(c, s.Temperature), si(c, s.Humidity)} }
