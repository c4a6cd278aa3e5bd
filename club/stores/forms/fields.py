"""Fields of the stores: text to money, volumes and weights, and back without loss."""

from __future__ import annotations

import unicodedata
from abc import abstractmethod
from fractions import Fraction
from typing import Any

from django import forms

from club.base.fields import QuantityFormField
from club.base.quantities.errors import QuantityError
from club.base.quantities.mass import Mass, parse_mass
from club.base.quantities.money import EXAMPLES as PRICES
from club.base.quantities.money import parse_money
from club.base.quantities.shown import NO_BREAK_SPACE, decimal
from club.base.quantities.typed import UNSEEN
from club.base.quantities.volume import Volume, parse_volume
from club.stores.money import money, own_currency
from projects.library.sentences.drafting import HIDDEN_MARKS, LONG_TEXT

NL_PER_ML = 10**6
NG_PER_G = 10**9
NOUGHT = frozenset({"0", "0.0", "0,0"})


class MoneyField(QuantityFormField):
    """Gives whole minor units of the installation's currency, nought allowed."""

    kind = "price"
    help: Any = ""

    def __init__(self, **kwargs: Any) -> None:
        super().__init__(example=PRICES[own_currency().decimals], **kwargs)

    def parse(self, text: str) -> int:
        return parse_money(text, own_currency())

    def prepare_value(self, value: object) -> object:
        return money(value).rpartition(NO_BREAK_SPACE)[0] if isinstance(value, int) else value


class AmountField(QuantityFormField):
    """An amount with its unit. Where `zero` says so, nothing left is one too, also without a unit."""

    help: Any = ""
    none: Volume | Mass

    def __init__(self, *, zero: bool = False, **kwargs: Any) -> None:
        self.zero = zero
        super().__init__(**kwargs)

    @abstractmethod
    def read(self, text: str) -> Volume | Mass:
        """The amount in the text, or QuantityError."""

    def parse(self, text: str) -> Volume | Mass:
        try:
            return self.read(text)
        except QuantityError as error:
            if self.zero and (error.code == "nought" or text.strip() in NOUGHT):
                return self.none
            raise


class VolumeField(AmountField):
    """Gives a Volume."""

    kind = "volume"
    none = Volume(0)

    def read(self, text: str) -> Volume:
        return parse_volume(text)

    def prepare_value(self, value: object) -> object:
        if not isinstance(value, Volume):
            return value
        return value.typed or f"{decimal(Fraction(value.nl, NL_PER_ML), 6)}{NO_BREAK_SPACE}ml"


class MassField(AmountField):
    """Gives a Mass."""

    kind = "mass"
    none = Mass(0)

    def read(self, text: str) -> Mass:
        return parse_mass(text)

    def prepare_value(self, value: object) -> object:
        if not isinstance(value, Mass):
            return value
        return value.typed or f"{decimal(Fraction(value.ng, NG_PER_G), 9)}{NO_BREAK_SPACE}g"


class LinesField(forms.CharField):
    """Text in lines, as an address is: no blanks at its ends, nothing hidden in it."""

    def __init__(self, most: int, **kwargs: Any) -> None:
        self.most = most
        super().__init__(widget=forms.Textarea(attrs={"rows": 4}), **kwargs)
        # Its own sentences say everything.
        self.validators = []

    def to_python(self, value: Any) -> str:
        lines = (super().to_python(value) or "").splitlines()
        return "\n".join(line.strip() for line in lines).strip()

    def validate(self, value: str) -> None:
        super().validate(value)
        if len(value) > self.most:
            raise forms.ValidationError(LONG_TEXT, "long_text", {"most": self.most})
        if any(unicodedata.category(sign) in UNSEEN for sign in value.replace("\n", "")):
            raise forms.ValidationError(HIDDEN_MARKS, "hidden_marks")
