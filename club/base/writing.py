"""Writes that somebody else may have overtaken: how they are noticed, and what the form then says."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from contextlib import contextmanager
from typing import TypeVar

from django.db import IntegrityError, transaction
from django.db.models import ProtectedError
from django.forms import BaseForm
from django.utils.translation import gettext_lazy as _

STALE = _(
    "Somebody else changed this since you opened it, so nothing was written. "
    "Open it anew in another window, compare, and write there what is yours."
)
TAKEN = _("Somebody else took this number or name just now, so nothing was written. Choose another one.")
IN_USE = _("Classes or other lists still name it, so it stays, and nothing was changed.")

Thing = TypeVar("Thing")


class StaleError(Exception):
    """Somebody else mended this, or took it out of the list, since the form was opened."""


class TakenError(Exception):
    """Somebody else took this number or name between the form's check and the write."""


class InUseError(Exception):
    """Something else that is kept still refers to this, so it can't be taken away."""


@contextmanager
def unless_taken() -> Iterator[None]:
    """A savepoint in which a broken unique constraint becomes TakenError, and the rest of the work stays."""
    try:
        with transaction.atomic():
            yield
    except IntegrityError as error:
        raise TakenError from error


@contextmanager
def unless_in_use() -> Iterator[None]:
    """Deleting what a protecting row refers to becomes InUseError."""
    try:
        yield
    except ProtectedError as error:
        raise InUseError from error


def written(form: BaseForm, write: Callable[[], Thing]) -> Thing | None:
    """What the write kept, or None with the reason on the form when somebody else was faster."""
    try:
        return write()
    except StaleError:
        form.add_error(None, STALE)
    except TakenError:
        form.add_error(None, TAKEN)
    except InUseError:
        form.add_error(None, IN_USE)
    return None


def status_of(form: BaseForm) -> int:
    """The status of a page that shows this form: 422 when it came back with something wrong."""
    return 422 if form.is_bound and form.errors else 200
