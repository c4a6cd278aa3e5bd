from __future__ import annotations

from club.classes.models.class_session import ClassSession
from club.classes.models.done import PreparationDone
from club.classes.models.sign_up import SignUp

__all__ = ["ClassSession", "PreparationDone", "SignUp"]
