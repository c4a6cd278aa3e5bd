from __future__ import annotations

import pytest
from django.test import Client

from club.base.access import Role
from tests.conftest import SignInAs


@pytest.fixture
def as_instructor(sign_in_as: SignInAs) -> Client:
    return sign_in_as(Role.INSTRUCTOR)
