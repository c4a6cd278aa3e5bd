"""Form fields for lengths and speeds, and the model field that keeps a length in two columns."""

from __future__ import annotations

from abc import ABC, abstractmethod
from functools import wraps
from typing import TYPE_CHECKING, Any, TypeVar

from django import forms
from django.core.exceptions import ValidationError
from django.db import models
from django.db.models.query_utils import DeferredAttribute
from django.utils.translation import gettext_lazy as _

from club.base.quantities.errors import QuantityError
from club.base.quantities.length import Length, check_length, parse_length, says, write_length
from club.base.quantities.shown import thousands
from club.base.quantities.speed import parse_rpm
from club.base.quantities.typed import LONGEST_TYPED
from club.base.sentences import sentence

if TYPE_CHECKING:
    from collections.abc import Collection

    # What the attribute takes and gives: `Length`, or `Length | None` where the column may be null.
    Taken = TypeVar("Taken", contravariant=True)
    Given = TypeVar("Given", covariant=True)
    BigInteger = models.BigIntegerField[Taken, Given]
else:
    Taken = Given = None
    # Django's fields can't be subscripted while they run.
    BigInteger = {(Taken, Given): models.BigIntegerField}

LENGTH_HELP = _("As you read it: 15\u00a03/4\u00a0in, 15.75\u00a0in or 400\u00a0mm.")
RPM_HELP = _("In rpm, as 450 or 1\u00a0450.")


class QuantityFormField(forms.Field, ABC):
    """Text in, a value out. What was typed stays in the field when it is refused.

    `example` says how the thing at hand is written, in place of the kind's own examples.
    """

    kind = ""
    help = LENGTH_HELP

    def __init__(self, *, example: str = "", **kwargs: Any) -> None:
        self.example = example
        kwargs["help_text"] = kwargs.get("help_text") or self.help
        kwargs.setdefault("widget", forms.TextInput(attrs={"class": "short", "autocomplete": "off"}))
        missing = QuantityError("empty", kind=self.kind)
        kwargs["error_messages"] = {
            "required": sentence(missing, example),
            **(kwargs.get("error_messages") or {}),
        }
        super().__init__(**kwargs)

    @abstractmethod
    def parse(self, text: str) -> object:
        """The value in the text, or QuantityError."""

    def to_python(self, value: object) -> Any:
        if value is None or not str(value).strip():
            return None
        try:
            return self.parse(str(value))
        except QuantityError as error:
            raise ValidationError(sentence(error, self.example), code=error.code) from error

    def has_changed(self, initial: object, data: object) -> bool:
        return str(self.prepare_value(initial) or "") != str(data or "").strip()


class LengthFormField(QuantityFormField):
    """Gives a Length or None. `zero` lets nought be one."""

    kind = "length"

    def __init__(self, *, zero: bool = False, **kwargs: Any) -> None:
        self.zero = zero
        super().__init__(**kwargs)

    def parse(self, text: str) -> Length:
        return parse_length(text, zero=self.zero)

    def prepare_value(self, value: object) -> object:
        """The text as it was typed, so that mending one field never rewrites another."""
        if isinstance(value, Length):
            return write_length(value)
        return value


class RpmFormField(QuantityFormField):
    """Gives whole rpm or None."""

    kind = "speed"
    help = RPM_HELP

    def parse(self, text: str) -> int:
        return parse_rpm(text)

    def prepare_value(self, value: object) -> object:
        return thousands(value) if isinstance(value, int) else value


class LengthAttribute(DeferredAttribute):
    """Puts the two columns together to one Length, and takes one apart."""

    def __get__(self, instance: models.Model | None, cls: type[models.Model] | None = None) -> Any:
        if instance is None:
            return self
        name, typed_name = self.field.attname, typed_name_of(self.field)
        kept = instance.__dict__
        missing = [column for column in (name, typed_name) if column not in kept]
        if missing:
            instance.refresh_from_db(fields=missing)
        nm, typed = kept[name], kept[typed_name]
        if not isinstance(nm, int):
            return nm
        # Nanometres may have been changed in bulk: an old text must never stand for a new length.
        return Length(nm, typed if typed and says(typed, nm) else "")

    def __set__(self, instance: models.Model, value: object) -> None:
        name, typed_name = self.field.attname, typed_name_of(self.field)
        kept = instance.__dict__
        if isinstance(value, Length):
            kept[name], kept[typed_name] = value.nm, value.typed
            return
        kept[name] = value
        # The database hands in nanometres first and the text after; any other bare number has no text.
        if value is None or typed_name in kept:
            kept[typed_name] = ""


class TypedAttribute(DeferredAttribute):
    """The text of a length. It is set through the length; Django's own empty default doesn't wipe it."""

    def __set__(self, instance: models.Model, value: str) -> None:
        name = self.field.attname
        if value or name not in instance.__dict__:
            instance.__dict__[name] = value


class LengthField(BigInteger[Taken, Given]):
    """A Length in two columns: `<name>` in nanometres and `<name>_typed`, the text somebody wrote.

    Filters, ordering, F() and constraints work on nanometres and take a Length or whole nanometres;
    `values()` and aggregates give nanometres. `save(update_fields=...)` with the name writes both columns.
    `update()` and `bulk_update()` write only what they name: name both, or the text is forgotten.
    """

    description = _("Length")
    descriptor_class: type[DeferredAttribute] = LengthAttribute
    # For django-stubs, which reads them to type the attribute.
    if TYPE_CHECKING:
        _pyi_private_set_type: Length  # type: ignore[assignment]
        _pyi_private_get_type: Length  # type: ignore[assignment]

    def __init__(self, *args: Any, zero: bool = False, **kwargs: Any) -> None:
        self.zero = zero
        super().__init__(*args, **kwargs)

    def deconstruct(self) -> tuple[str, str, Any, Any]:
        name, path, args, kwargs = super().deconstruct()
        return name, path, args, {**kwargs, "zero": True} if self.zero else kwargs

    def contribute_to_class(self, cls: type[models.Model], name: str, private_only: bool = False) -> None:
        # A migration's own picture of the model lists both columns itself and deals with plain nanometres.
        if cls.__module__ == "__fake__":
            self.descriptor_class = DeferredAttribute
            super().contribute_to_class(cls, name, private_only)
            return
        super().contribute_to_class(cls, name, private_only)
        if all(field.name != typed_name_of(self) for field in cls._meta.local_fields):
            _typed_column().contribute_to_class(cls, typed_name_of(self))
        if not hasattr(cls.save_base, "writes_typed"):
            cls.save_base = _writing_typed(cls.save_base)  # type: ignore[method-assign]

    @property
    def validators(self) -> list[Any]:
        """Only those given: the range of a column is none of a Length's, `validate` looks at its own."""
        return [*self._validators]  # type: ignore[attr-defined]

    def to_python(self, value: Any) -> Any:
        """From a form, a fixture (whole nanometres, also as digits) or text with a unit."""
        if value is None or isinstance(value, Length):
            return value
        if isinstance(value, int) or str(value).isdecimal():
            return Length(int(value))
        try:
            return parse_length(str(value), zero=self.zero)
        except QuantityError as error:
            raise ValidationError(sentence(error), code=error.code) from error

    def validate(self, value: Any, model_instance: models.Model | None) -> None:
        super().validate(value, model_instance)
        if isinstance(value, Length):
            try:
                check_length(value, zero=self.zero)
            except QuantityError as error:
                raise ValidationError(sentence(error), code=error.code) from error

    def get_prep_value(self, value: Any) -> Any:
        return super().get_prep_value(value.nm if isinstance(value, Length) else value)

    def value_to_string(self, obj: models.Model) -> str:
        value: Any = self.value_from_object(obj)
        return "" if value is None else str(value.nm)

    def formfield(self, **kwargs: Any) -> Any:
        return models.Field.formfield(self, **{"form_class": LengthFormField, "zero": self.zero, **kwargs})


def typed_name_of(field: models.Field[Any, Any]) -> str:
    return f"{field.name}_typed"


def _typed_column() -> models.CharField[str, str]:
    column: models.CharField[str, str] = models.CharField(
        max_length=LONGEST_TYPED, blank=True, default="", editable=False
    )
    column.descriptor_class = TypedAttribute
    return column


def _writing_typed(save_base: Any) -> Any:
    """`save_base` that writes the text of each length whose name is among `update_fields`."""

    @wraps(save_base)
    def both(
        self: models.Model, *args: Any, update_fields: Collection[str] | None = None, **kwargs: Any
    ) -> None:
        if update_fields is not None:
            lengths = (field for field in self._meta.concrete_fields if isinstance(field, LengthField))
            texts = {typed_name_of(field) for field in lengths if field.name in update_fields}
            update_fields = frozenset(update_fields) | texts
        save_base(self, *args, update_fields=update_fields, **kwargs)

    both.writes_typed = True  # type: ignore[attr-defined]
    return both
