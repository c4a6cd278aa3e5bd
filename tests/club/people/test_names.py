from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from club.people.names import sign_in_key, sought


@pytest.mark.parametrize("typed", ["ilse.b", "ILSE.B", "Ilse.b", "\uff49lse.b"])
def test_a_sign_in_name_is_one_in_whatever_case_it_is_typed(typed: str) -> None:
    assert sign_in_key(typed) == "ilse.b"


@given(st.text())
def test_the_key_of_a_key_is_itself(text: str) -> None:
    key = sign_in_key(text)

    assert sign_in_key(key) == key


@pytest.mark.parametrize(
    ("words", "name"),
    [("asa", "Åsa Öberg"), ("ÖBERG", "Åsa Öberg"), ("strasse", "Straße"), ("a b", "A \t B")],
)
def test_a_name_is_found_without_case_accents_and_double_blanks(words: str, name: str) -> None:
    assert sought(words) in sought(name)


@given(st.text())
def test_what_is_looked_for_holds_no_sign_that_a_database_refuses(text: str) -> None:
    assert "\x00" not in sought(text)
