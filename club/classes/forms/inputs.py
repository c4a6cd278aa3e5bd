"""Inputs of days and times: the browser's own picker, and plain text for what no picker could show."""

from __future__ import annotations

from datetime import date, datetime, time
from typing import Any

from django import forms


class _Picker:
    """A picker drops what it can't read, so a text that is none comes back in a field that keeps it."""

    picker = ""
    reads: Any = None

    def get_context(self, name: str, value: Any, attrs: dict[str, Any] | None) -> dict[str, Any]:
        context: dict[str, Any] = super().get_context(name, value, attrs)  # type: ignore[misc]
        context["widget"]["type"] = self.picker if self._is_readable(context["widget"]["value"]) else "text"
        return context

    def _is_readable(self, text: str | None) -> bool:
        try:
            self.reads(text)
        except ValueError:
            return False
        except TypeError:
            # Nothing stands there yet.
            return True
        return True


class DayInput(_Picker, forms.DateInput):
    picker = "date"
    reads = staticmethod(date.fromisoformat)

    def __init__(self) -> None:
        super().__init__(format="%Y-%m-%d", attrs={"class": "short"})


class ClockInput(_Picker, forms.TimeInput):
    picker = "time"
    reads = staticmethod(time.fromisoformat)

    def __init__(self) -> None:
        super().__init__(format="%H:%M", attrs={"class": "short"})


class MomentInput(_Picker, forms.DateTimeInput):
    picker = "datetime-local"
    reads = staticmethod(datetime.fromisoformat)

    def __init__(self) -> None:
        super().__init__(format="%Y-%m-%dT%H:%M", attrs={"class": "short"})


class WholeInput(forms.TextInput):
    """A whole number, as text: an input of numbers would drop what is none."""

    def __init__(self) -> None:
        super().__init__(attrs={"class": "short", "inputmode": "numeric", "autocomplete": "off"})
