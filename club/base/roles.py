"""Who a person can be here. The access table says what each may do."""

from __future__ import annotations

from enum import StrEnum
from typing import NamedTuple


class Role(StrEnum):
    COORDINATOR = "coordinator"
    INSTRUCTOR = "instructor"
    HELPER = "helper"
    SAFETY_OFFICER = "safety_officer"
    TREASURER = "treasurer"
    STUDENT = "student"


STAFF = frozenset(Role) - {Role.STUDENT}


class Grant(NamedTuple):
    """A role somebody holds, in one workshop or (None) in every workshop."""

    role: Role
    workshop_id: int | None


class Everyone(StrEnum):
    """What an address asks for where it asks for no role."""

    ANYONE = "anyone"
    SIGNED_IN = "signed in"


Who = frozenset[Role] | Everyone
