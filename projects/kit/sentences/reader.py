"""How whoever reads a kit list is shown its lengths, its money and what lies on the shelf."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from fractions import Fraction

from django.utils.translation import gettext as _

from club.base.quantities.length import NM_PER_INCH, Length, LengthStyle
from club.base.quantities.money import Currency, show_money
from club.base.quantities.shown import NO_BREAK_SPACE, decimal
from projects.library.domain.recipe import Recipe
from projects.library.sentences.lengths import in_inches, shown_in


@dataclass(frozen=True)
class Reader:
    """`names` has the words for the keys of supplies; `typed`, by nanometres, the lengths somebody wrote."""

    lengths: LengthStyle
    recipe: Recipe
    currency: Currency
    names: Mapping[str, str] = field(default_factory=dict)
    typed: Mapping[int, Length] = field(default_factory=dict)

    def length(self, nm: object) -> str:
        """`36 in`, as it was written where somebody wrote it and the reader wants it so."""
        assert isinstance(nm, int)
        return shown_in(self.lengths, self.recipe)(self.typed.get(nm, Length(nm)))

    def measured(self, nm: object) -> str:
        """A diameter as a calliper shows it: `0.484 in`, never in fractions; `12.29 mm`."""
        assert isinstance(nm, int)
        if self.lengths is LengthStyle.AS_TYPED and nm in self.typed:
            return self.length(nm)
        if in_inches(self.lengths, self.recipe):
            return f"{decimal(Fraction(nm, NM_PER_INCH), 3)}{NO_BREAK_SPACE}in"
        return f"{decimal(Fraction(nm, 10**6), 2)}{NO_BREAK_SPACE}mm"

    def rough(self, nm: object) -> str:
        """A length that is only an estimate, whatever it was rounded to."""
        assert isinstance(nm, int)
        about = _("about")
        shown = shown_in(self.lengths, self.recipe)(Length(nm))
        return shown if shown.startswith(about) else f"{about} {shown}"

    def money(self, minor: object) -> str:
        assert isinstance(minor, int)
        return show_money(minor, self.currency)

    def name(self, key: object) -> str:
        return self.names.get(str(key), str(key))
