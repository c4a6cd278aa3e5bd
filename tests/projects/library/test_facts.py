"""What follows from a drawing: closed forms of solids, densities of the Wood Handbook, slenderness."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from math import pi, sqrt

import pytest
from hypothesis import HealthCheck, given, settings

from club.base.quantities.length import Length, parse_length
from projects.geometry.profile import ProfileError
from projects.geometry.slenderness import BARE, Stub, slenderness
from projects.library.domain.blank import RoundBlank, SlabBlank, SquareBlank
from projects.library.domain.coats import Coat
from projects.library.domain.drawn import DrawnBore, DrawnMark, DrawnProfile
from projects.library.domain.facts import Facts, facts
from projects.library.domain.holding import (
    BetweenCentres,
    Collet,
    JamChuck,
    JamIn,
    ScrollChuck,
    Tailstock,
    TaperOnly,
)
from projects.library.domain.recipe import End, Recipe
from projects.library.domain.slender_mountings import slender_mountings
from projects.library.domain.sourced import Confidence
from projects.library.domain.words import Centre, Drive, EndKind, Grip
from projects.library.tables import woods
from tests.projects.library.demonstration import RECIPES
from tests.projects.library.examples import BEAD, BOWL, KNOB, OIL, PART, STRAIGHT, with_mounting
from tests.projects.library.strategies import recipes


def mm(value: float) -> Length:
    return Length(round(value * 1_000_000))


def turned(*marks: tuple[float, float], bore: tuple[tuple[float, float], ...] = ()) -> DrawnProfile:
    """Straights through these places and diameters, in mm."""

    def drawn(run: tuple[tuple[float, float], ...]) -> tuple[DrawnMark, ...]:
        return tuple(DrawnMark(mm(at), mm(across)) for at, across in run)

    inside = DrawnBore(drawn(bore), (STRAIGHT,) * (len(bore) - 1)) if bore else None
    return DrawnProfile(drawn(marks), (STRAIGHT,) * (len(marks) - 1), inside)


BAR = turned((0, 20), (100, 20))
# A bar of 20 mm in a square of 25 mm, both 100 mm long, of sugar maple.
PLAIN = replace(
    KNOB, profile=BAR, blank=SquareBlank("maple_sugar", mm(25), mm(100)), left_end=None, right_end=None
)


def expected_between(drawn: DrawnProfile, left: Stub = BARE, right: Stub = BARE) -> Fraction:
    """By the geometry itself, which is tested against quadrature."""
    return Fraction(round(slenderness(drawn.profile(), left=left, right=right).ratio * 1_000), 1_000)


def of(recipe: Recipe) -> Facts:
    return facts(recipe, woods())


def test_a_cylinder_has_the_volume_and_surface_of_the_textbook():
    """V = pi r² h, A = 2 pi r h and 2 pi r² for the ends (Euclid XII; any textbook of solid geometry)."""
    found = of(PLAIN)

    assert found.volume.nl == round(pi * 10**2 * 100 * 1_000)
    assert found.surface.outside.um2 == round(2 * pi * 10 * 100 * 10**6)
    assert found.surface.ends.um2 == round(2 * pi * 10**2 * 10**6)
    assert found.surface.inside.um2 == 0
    assert found.surface.total.um2 == found.surface.outside.um2 + found.surface.ends.um2
    assert (found.length, found.largest, found.smallest) == (mm(100), mm(20), mm(20))


def test_a_cone_has_a_third_of_its_cylinder_and_its_slant_height():
    """V = pi r² h / 3, A = pi r s: r 15, h 20, s 25."""
    found = of(replace(PLAIN, profile=turned((0, 30), (20, 0))))

    assert found.volume.nl == round(pi * 15**2 * 20 / 3 * 1_000)
    assert found.surface.outside.um2 == round(pi * 15 * sqrt(15**2 + 20**2) * 10**6)


def test_a_bore_is_taken_off_and_its_wall_is_surface():
    found = of(replace(PLAIN, profile=turned((0, 20), (100, 20), bore=((0, 10), (100, 10)))))

    assert found.volume.nl == round(pi * (10**2 - 5**2) * 100 * 1_000)
    assert found.surface.inside.um2 == round(2 * pi * 5 * 100 * 10**6)
    assert found.workings["volume"].values == {"bored": True}


def test_the_ends_of_a_bar_are_its_end_grain_along_the_axis():
    """Ends over all: 2 pi r² over 2 pi r (r + h) is r / (r + h): 10 over 110."""
    found = of(PLAIN)

    assert found.end_grain_percent == Fraction(round(10 / 110 * 100_000), 1_000)
    assert found.workings["end_grain"].values["grain_across"] is False


def test_across_the_axis_the_mantle_shows_two_over_pi_of_end_grain():
    """The mean of |cos| over a round is 2 / pi; the flat ends show none."""
    slab = replace(PLAIN, blank=SlabBlank("maple_sugar", mm(25), mm(100)))

    expected = 2 / pi * 100 / 110 * 100
    assert abs(of(slab).end_grain_percent - Fraction(expected)) < Fraction(1, 1_000)


def test_the_mass_is_volume_times_the_density_of_the_handbook():
    """Sugar maple at 12 %: 705.6 kg/m³ (Wood Handbook, FPL-GTR-282, table 5-3b and equation 4-14)."""
    found = of(PLAIN)

    assert found.mass.ng == pytest.approx(pi * 10**2 * 100 * 705.6e-6 * 10**9, rel=1e-10)
    assert found.density.confidence is Confidence.CONFIRMED
    assert "Wood Handbook" in found.workings["mass"].source


def test_a_frozen_edition_keeps_the_density_it_was_frozen_with():
    frozen = replace(PLAIN, blank=replace(PLAIN.blank, density_kg_per_m3=700))

    assert of(frozen).mass.ng == pytest.approx(pi * 10**2 * 100 * 700e-6 * 10**9, rel=1e-10)
    assert of(frozen).density.source == of(PLAIN).density.source


@pytest.mark.parametrize("species", ["yew", "unknown", "no_such_wood"])
def test_a_wood_without_figures_has_no_mass(species):
    found = of(replace(PLAIN, blank=replace(PLAIN.blank, species=species)))

    assert (found.mass, found.density) == (None, None)
    assert "mass" not in found.workings
    assert found.species_label


def test_a_density_kept_for_a_wood_that_no_table_has_counts_as_estimated():
    kept = replace(PLAIN, blank=replace(PLAIN.blank, species="yew", density_kg_per_m3=670))

    assert of(kept).density.confidence is Confidence.ESTIMATED


def test_an_estimated_density_says_so_in_the_working():
    found = of(replace(PLAIN, blank=replace(PLAIN.blank, species="iroko")))

    assert found.workings["mass"].values["confidence"] is Confidence.ESTIMATED


def test_what_of_the_blank_is_turned_away():
    """Of a square of 25 mm a bar of 20 mm leaves 1 - pi 100 / 625."""
    found = of(PLAIN)

    assert found.shavings_percent == Fraction(round((1 - pi * 100 / 625) * 100_000), 1_000)


def test_a_blank_that_doesnt_hold_the_piece_has_no_shavings():
    found = of(replace(PLAIN, blank=SquareBlank("maple_sugar", mm(15), mm(100))))

    assert found.shavings_percent is None
    assert "shavings" not in found.workings


def test_the_minutes_are_those_of_mountings_and_steps():
    assert (of(KNOB).at_lathe_minutes, of(KNOB).beside_minutes) == (KNOB.time.hands_on, 0)
    assert of(BOWL).at_lathe_minutes == BOWL.time.hands_on


def test_finishing_off_the_lathe_is_time_beside_it():
    coats = (Coat("walnut_oil", wait_hours=24, on_the_lathe=False),)

    found = of(replace(KNOB, finish=coats))

    assert found.beside_minutes == OIL.minutes
    assert found.at_lathe_minutes == KNOB.time.hands_on - OIL.minutes
    assert of(replace(KNOB, finish=())).beside_minutes == 0


def test_a_drawing_that_no_wood_can_have_is_refused():
    with pytest.raises(ProfileError, match="zero_length"):
        of(replace(PLAIN, profile=turned((0, 20), (0, 20))))


class TestSlenderness:
    """Length over a plain bar's diameter, an overhung one counted double; the limit is common practice."""

    CENTRES = BetweenCentres(Drive.TWO_PRONG)

    @staticmethod
    def held(
        holding: object, *, ends: tuple[End | None, End | None] = (None, None), **changes: object
    ) -> Recipe:
        recipe = replace(PLAIN, left_end=ends[0], right_end=ends[1])
        return with_mounting(recipe, 0, **{"holding": holding, "steps": (BEAD,), **changes})

    def ratio(self, recipe: Recipe) -> Fraction | None:
        (found,) = slender_mountings(recipe)
        return found.ratio

    def test_a_plain_bar_between_centres_is_its_length_over_its_diameter(self):
        assert self.ratio(self.held(self.CENTRES)) == 5

    def test_nubs_left_at_the_ends_count_as_well(self):
        """Two stubs of 10 mm by 10 mm: 120 over the fourth root of 120 / (100 / 20⁴ + 20 / 10⁴)."""
        nub = End(EndKind.NUB, mm(10), mm(10))

        bar = (120 / (100 / 20**4 + 20 / 10**4)) ** 0.25
        assert self.ratio(self.held(self.CENTRES, ends=(nub, nub))) == Fraction(
            round(120 / bar * 1_000), 1_000
        )

    @pytest.mark.parametrize("turned_round", [False, True])
    def test_of_a_tenon_only_what_stands_out_of_the_jaws_is_free(self, turned_round):
        tenon = End(EndKind.TENON, mm(30), mm(12))
        chuck = ScrollChuck("plain jaws", Grip.TENON, mm(30), mm(8))
        ends = (None, tenon) if turned_round else (tenon, None)

        held = self.held(chuck, ends=ends, turned_round=turned_round, tailstock=Tailstock(Centre.LIVE_POINT))

        bar = (104 / (100 / 20**4 + 4 / 30**4)) ** 0.25
        assert self.ratio(held) == Fraction(round(104 / bar * 1_000), 1_000)

    def test_turned_round_it_is_held_at_the_other_end(self):
        """A nub of 10 mm, 10 mm long, at one end; the tenon of 30 mm at the other is wholly in the jaws."""
        tenon, nub = End(EndKind.TENON, mm(30), mm(8)), End(EndKind.NUB, mm(10), mm(10))
        chuck = ScrollChuck("plain jaws", Grip.TENON, mm(30), mm(8))
        up = Tailstock(Centre.LIVE_POINT)

        drawn = self.held(chuck, ends=(tenon, nub), tailstock=up)
        turned_round = self.held(chuck, ends=(nub, tenon), tailstock=up, turned_round=True)

        bar = (110 / (100 / 20**4 + 10 / 10**4)) ** 0.25
        assert self.ratio(drawn) == self.ratio(turned_round) == Fraction(round(110 / bar * 1_000), 1_000)

    def test_a_cone_is_held_at_the_end_it_is_mounted_by(self):
        """A tenon of 20 mm stiffens the end of 10 mm and not the one of 30 mm."""
        tenon = End(EndKind.TENON, mm(20), mm(20))
        cone = turned((0, 10), (100, 30))
        chuck = ScrollChuck("plain jaws", Grip.TENON, mm(20), mm(5))
        up = Tailstock(Centre.LIVE_POINT)

        thin = replace(self.held(chuck, ends=(tenon, None), tailstock=up), profile=cone)
        thick = replace(self.held(chuck, ends=(None, tenon), tailstock=up, turned_round=True), profile=cone)

        assert self.ratio(thin) == expected_between(cone, left=Stub(20_000_000, 15_000_000))
        assert self.ratio(thick) == expected_between(cone, right=Stub(20_000_000, 15_000_000))
        assert self.ratio(thin) != self.ratio(thick)

    def test_without_the_tailstock_the_length_counts_double(self):
        tenon = End(EndKind.TENON, mm(20), mm(8))
        collet = Collet(mm(20), mm(8))

        overhung = self.held(collet, ends=(tenon, None), tailstock=None)

        assert self.ratio(overhung) == 10
        assert self.ratio(with_mounting(overhung, 0, tailstock=Tailstock(Centre.LIVE_POINT))) == 5

    @pytest.mark.parametrize(("away_from", "ratio"), [("part", 5), ("bead", 10)])
    def test_the_tailstock_may_go_for_parting_and_for_nothing_before_it(self, away_from, ratio):
        tenon = End(EndKind.TENON, mm(20), mm(8))
        tailstock = Tailstock(Centre.LIVE_POINT, away_from=away_from)

        held = self.held(Collet(mm(20), mm(8)), ends=(tenon, None), steps=(BEAD, PART), tailstock=tailstock)

        assert self.ratio(held) == ratio

    def test_a_recess_leaves_nothing_between_the_jaws_and_the_piece(self):
        chuck = ScrollChuck("plain jaws", Grip.RECESS, mm(15), mm(3))

        assert self.ratio(self.held(chuck, tailstock=Tailstock(Centre.LIVE_POINT))) == 5

    @pytest.mark.parametrize(
        "holding",
        [
            JamChuck(JamIn.SCROLL_CHUCK, parse_length("20 mm")),
            TaperOnly(),
            Collet(parse_length("20 mm"), parse_length("8 mm")),
        ],
    )
    def test_where_nobody_wrote_down_what_holds_the_end_nobody_can_say(self, holding):
        assert self.ratio(self.held(holding)) is None
        assert of(self.held(holding)).slenderness[0].warns is False

    def test_an_end_that_runs_out_to_a_point_cant_be_said_either(self):
        pointed = replace(self.held(self.CENTRES), profile=turned((0, 20), (100, 0)))

        assert self.ratio(pointed) is None

    def test_a_warning_is_given_above_the_limit_and_not_at_it(self):
        def slender(length: float) -> Recipe:
            return replace(self.held(self.CENTRES), profile=turned((0, 20), (length, 20)))

        assert [slender_mountings(slender(length))[0].warns for length in (200, 201)] == [False, True]
        assert slender_mountings(slender(150), warn_above=7)[0].warns

    def test_the_working_has_what_went_in(self):
        found = of(self.held(self.CENTRES))

        working = found.workings[f"slenderness:{KNOB.mountings[0].key}"]
        assert working.values == {
            "unsupported": mm(100),
            "bar": mm(20),
            "overhung": False,
            "warn_above": 10,
        }


@settings(max_examples=60, suppress_health_check=[HealthCheck.too_slow, HealthCheck.data_too_large])
@given(recipe=recipes())
def test_any_recipe_has_its_facts(recipe):
    found = of(recipe)

    assert 0 <= found.end_grain_percent <= 100
    assert found.shavings_percent is None or 0 <= found.shavings_percent <= 100
    assert found.smallest <= found.largest
    assert [each.mounting for each in found.slenderness] == [mounting.key for mounting in recipe.mountings]
    assert found.at_lathe_minutes + found.beside_minutes == sum(
        part.minutes for part in [*recipe.mountings, *recipe.steps()]
    )


@pytest.mark.parametrize("recipe", RECIPES, ids=lambda recipe: recipe.key)
def test_every_project_of_the_demonstration_says_what_it_weighs_and_what_is_turned_away(recipe):
    found = of(recipe)

    assert found.mass is not None
    assert found.shavings_percent is not None
    assert {"volume", "surface", "end_grain", "mass", "shavings", "minutes"} <= set(found.workings)


def test_a_round_blank_is_weighed_up_as_round():
    found = of(replace(PLAIN, blank=RoundBlank("maple_sugar", mm(25), mm(100))))

    assert found.shavings_percent == Fraction(round((1 - 400 / 625) * 100_000), 1_000)
