"""Quantities in JSON: as they were typed, `"1 1/2 in"`, or whole base units where they were worked out."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from functools import partial

from club.base.quantities import area, length, volume
from club.base.quantities.area import Area, parse_area
from club.base.quantities.errors import QuantityError
from club.base.quantities.length import Length, parse_length
from club.base.quantities.units import Kind
from club.base.quantities.volume import Volume, parse_volume

Quantity = Length | Area | Volume


@dataclass(frozen=True)
class QuantityForm:
    """How one kind is read and made; `unit` names the base unit, `most` is the largest in it."""

    kind: Kind
    read: Callable[[str], Quantity]
    make: Callable[[int], Quantity]
    amount: Callable[[Quantity], int]
    unit: str
    most: int


def _amount(field: str, quantity: Quantity) -> int:
    amount = getattr(quantity, field)
    if not isinstance(amount, int):
        raise TypeError(quantity)
    return amount


QUANTITIES: Mapping[type, QuantityForm] = {
    Length: QuantityForm(
        Kind.LENGTH,
        partial(parse_length, zero=True),
        Length,
        partial(_amount, "nm"),
        "nanometres",
        length.LONGEST,
    ),
    Area: QuantityForm(
        Kind.AREA, parse_area, Area, partial(_amount, "um2"), "square micrometres", area.LARGEST
    ),
    Volume: QuantityForm(
        Kind.VOLUME, parse_volume, Volume, partial(_amount, "nl"), "nanolitres", volume.LARGEST
    ),
}


def quantity_to_json(quantity: Quantity) -> str | int:
    """What was typed, if it still says that very amount, else the amount in base units."""
    form = QUANTITIES[type(quantity)]
    amount = form.amount(quantity)
    if not quantity.typed:
        return amount
    try:
        read = form.read(quantity.typed)
    except QuantityError:
        return amount
    return read.typed if form.amount(read) == amount else amount


def quantity_from_json(data: str | int, form: QuantityForm, *, above: bool) -> Quantity:
    """The way back; raises QuantityError, also for nought where `above` says so."""
    quantity = form.read(data) if isinstance(data, str) else form.make(data)
    if above and form.amount(quantity) == 0:
        raise QuantityError("nought", kind=form.kind)
    return quantity
