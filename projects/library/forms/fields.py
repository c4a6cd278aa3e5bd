"""Fields of a recipe: text to the values that its records hold, and back without loss."""

from __future__ import annotations

import re
from abc import ABC, abstractmethod
from collections.abc import Callable, Iterable
from fractions import Fraction
from typing import Any, TypeAlias

from django import forms

from club.base.fields import QuantityFormField
from club.base.quantities.area import Area
from club.base.quantities.length import Length
from club.base.quantities.shown import NO_BREAK_SPACE, decimal, thousands
from club.base.quantities.units import Kind
from club.base.quantities.volume import Volume
from club.base.sentences import EXAMPLES
from projects.library.domain.bounds import Many, Text, Whole
from projects.library.domain.keys import skill_key, skill_words
from projects.library.domain.quantity_form import Quantity, QuantityForm, quantity_from_json, quantity_to_json
from projects.library.sentences.drafting import (
    CHOOSE,
    HIDDEN_MARKS,
    LONG_TEXT,
    NO_GRIT,
    NO_SKILL,
    NOTHING_HERE,
    TOO_FEW,
    TOO_MANY,
    WHOLE_NUMBER,
)

# What may be chosen: the word or key, and what people read for it.
Offered: TypeAlias = Iterable[tuple[str, Any]]
# A line end that somebody typed or pasted is a blank: a passage is one paragraph.
LINE_ENDS = re.compile(r"\s*[\t\r\n\v\f\x85\u2028\u2029]+\s*")
# Text that is longer goes into several lines.
LONGEST_LINE = 200
# How each kind is written where nobody typed it: its unit, and in how many decimals it is exact.
EXACT = {Length: ("mm", 6), Area: ("cm²", 8), Volume: ("ml", 6)}


class RecipeTextField(forms.CharField):
    """Text within its bounds; blanks at its ends go, line ends become blanks."""

    def __init__(self, bounds: Text, **kwargs: Any) -> None:
        self.bounds = bounds
        if bounds.most > LONGEST_LINE:
            kwargs.setdefault("widget", forms.Textarea(attrs={"rows": 3}))
        kwargs.setdefault("error_messages", {"required": NOTHING_HERE})
        super().__init__(**kwargs)
        # Its own sentences say everything.
        self.validators = []

    def to_python(self, value: Any) -> str:
        text = super().to_python(value)
        return LINE_ENDS.sub(" ", text).strip() if text else ""

    def validate(self, value: str) -> None:
        super().validate(value)
        if len(value) > self.bounds.most:
            raise forms.ValidationError(LONG_TEXT, "long_text", {"most": self.bounds.most})
        if value and not re.search(self.bounds.pattern, value):
            raise forms.ValidationError(HIDDEN_MARKS, "hidden_marks")


class WholeField(forms.Field):
    """A whole number in the digits 0 to 9."""

    def __init__(self, bounds: Whole, **kwargs: Any) -> None:
        self.bounds = bounds
        kwargs.setdefault("widget", forms.TextInput(attrs={"class": "short", "inputmode": "numeric"}))
        super().__init__(**kwargs)

    def to_python(self, value: Any) -> int | None:
        text = "" if value is None else str(value).strip()
        if not text:
            return None
        number = _whole(text)
        if number is None or not self.bounds.least <= number <= self.bounds.most:
            raise self._refusal()
        return number

    def validate(self, value: Any) -> None:
        if value is None and self.required:
            raise self._refusal()

    def _refusal(self) -> forms.ValidationError:
        words = {"least": thousands(self.bounds.least), "most": thousands(self.bounds.most)}
        return forms.ValidationError(WHOLE_NUMBER, "whole_number", words)


def _whole(text: str) -> int | None:
    """The number in at most twelve digits 0 to 9."""
    return int(text) if re.fullmatch(r"[0-9]{1,12}", text) else None


class QuantityField(QuantityFormField):
    """A length, area or volume as the recipe holds it; nought only where `above` doesn't forbid it."""

    help: Any = ""

    def __init__(self, form: QuantityForm, *, above: bool, **kwargs: Any) -> None:
        self.form, self.above = form, above
        self.kind = form.kind.value
        # The head of a page says once how lengths are written.
        self.help = "" if form.kind is Kind.LENGTH else EXAMPLES[self.kind]
        super().__init__(**kwargs)

    def parse(self, text: str) -> Quantity:
        return quantity_from_json(text, self.form, above=self.above)

    def prepare_value(self, value: object) -> object:
        return quantity_text(value) if isinstance(value, Quantity) else value


def quantity_text(quantity: Quantity) -> str:
    """Text that is read back as this very quantity: what was typed for it, else exact decimals."""
    written = quantity_to_json(quantity)
    if isinstance(written, str):
        return written
    unit, places = EXACT[type(quantity)]
    return f"{decimal(Fraction(written, 10**places), places)}{NO_BREAK_SPACE}{unit}"


class OneOfField(forms.ChoiceField):
    """One of the offered words or keys. What is there already stays on offer, also when nobody knows it."""

    def __init__(self, offered: Offered, make: Callable[[str], Any] = str, **kwargs: Any) -> None:
        self.make = make
        kwargs.setdefault("error_messages", {"required": CHOOSE, "invalid_choice": CHOOSE})
        super().__init__(choices=list(offered), **kwargs)

    def clean(self, value: Any) -> Any:
        chosen = super().clean(value)
        return self.make(chosen) if chosen else None


class SomeOfField(forms.MultipleChoiceField):
    """Any of the offered words or keys, in the order in which they are offered.

    Ticks know no order: a list in which nothing was ticked or cleared stays as it was `before`.
    """

    widget = forms.CheckboxSelectMultiple

    def __init__(
        self,
        offered: Offered,
        bounds: Many,
        *,
        before: tuple[Any, ...] = (),
        make: Callable[[str], Any] = str,
        **kwargs: Any,
    ) -> None:
        self.offered, self.bounds, self.before, self.make = list(offered), bounds, before, make
        kwargs.setdefault("error_messages", {"required": CHOOSE, "invalid_choice": CHOOSE})
        super().__init__(choices=self.offered, **kwargs)

    def clean(self, value: Any) -> tuple[Any, ...]:
        ticked = set(super().clean(value))
        if {str(word) for word in self.before} == ticked:
            return self.before
        chosen = tuple(self.make(word) for word, _label in self.offered if word in ticked)
        check_many(chosen, self.bounds)
        return chosen


class SeveralField(forms.CharField, ABC):
    """Simple values in one line, with commas between."""

    refusal: Any = ""

    def __init__(self, bounds: Many, **kwargs: Any) -> None:
        self.bounds = bounds
        kwargs.setdefault("error_messages", {"required": NOTHING_HERE})
        super().__init__(**kwargs)
        self.validators = []

    def prepare_value(self, value: Any) -> Any:
        return ", ".join(self.write(entry) for entry in value) if isinstance(value, tuple) else value

    def clean(self, value: Any) -> tuple[Any, ...]:
        text = super().clean(value)
        parts = [part.strip() for part in text.split(",", self.bounds.most + 1) if part.strip()]
        check_many(parts, self.bounds)
        read = tuple(self.read(part) for part in parts)
        if None in read:
            raise forms.ValidationError(self.refusal, "unreadable")
        return read

    @abstractmethod
    def read(self, text: str) -> Any:
        """The value of one part, or None."""

    def write(self, entry: Any) -> str:
        return str(entry)


class GritsField(SeveralField):
    """P grades: `120, 180, 240`, also written `P120`."""

    refusal = NO_GRIT

    def __init__(self, bounds: Many, each: Whole, **kwargs: Any) -> None:
        self.each = each
        super().__init__(bounds, **kwargs)

    def read(self, text: str) -> int | None:
        number = _whole(text.removeprefix("P").removeprefix("p").strip())
        return number if number is not None and self.each.least <= number <= self.each.most else None


class SkillsField(SeveralField):
    """Skills by their words: `parting tool, beads`."""

    refusal = NO_SKILL

    def read(self, text: str) -> str | None:
        return skill_key(text) or None

    def write(self, entry: str) -> str:
        return skill_words(entry)


class SkillField(forms.CharField):
    """One skill by its words, or none."""

    def prepare_value(self, value: Any) -> Any:
        return skill_words(value) if isinstance(value, str) else value

    def clean(self, value: Any) -> str | None:
        text = super().clean(value)
        key = skill_key(text)
        if text and not key:
            raise forms.ValidationError(NO_SKILL, "unreadable")
        return key or None


def check_many(entries: Iterable[Any], bounds: Many) -> None:
    """Raise ValidationError for more or fewer entries than a list may have."""
    count = len(tuple(entries))
    if count > bounds.most:
        raise forms.ValidationError(TOO_MANY, "too_many", {"most": bounds.most})
    if count < bounds.least:
        raise forms.ValidationError(TOO_FEW, "too_few", {"least": bounds.least})
