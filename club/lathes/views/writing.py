from __future__ import annotations

from collections.abc import Callable
from typing import TypeVar

from django.forms import BaseForm

from club.lathes.actions import StaleError, TakenError
from club.lathes.sentences import STALE, TAKEN

Thing = TypeVar("Thing")


def written(form: BaseForm, write: Callable[[], Thing]) -> Thing | None:
    """What the write kept, or None with the reason on the form when somebody else was faster."""
    try:
        return write()
    except StaleError:
        form.add_error(None, STALE)
    except TakenError:
        form.add_error(None, TAKEN)
    return None
