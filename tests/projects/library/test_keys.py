from __future__ import annotations

import re

import pytest
from hypothesis import given
from hypothesis import strategies as st

from projects.library.domain.bounds import KEY
from projects.library.domain.keys import key_from, own_keys, skill_key, skill_words
from tests.projects.library.examples import KNOB


@pytest.mark.parametrize(
    ("text", "key"),
    [
        ("Drawer knob", "drawer-knob"),
        ("Cr\u00e8me br\u00fbl\u00e9e spoon", "creme-brulee-spoon"),
        ("  1/2 in dowel -- for the  knob ", "1-2-in-dowel-for-the-knob"),
        ("\u6728", "project"),
        ("", "project"),
        ("../../etc", "etc"),
    ],
)
def test_a_key_is_made_from_what_was_written(text, key):
    assert key_from(text, (), "project") == key


def test_a_key_that_is_taken_gets_a_number():
    assert key_from("Sand", {"sand", "sand-2"}, "step") == "sand-3"


@given(st.text(max_size=200))
def test_every_key_is_one_that_a_recipe_lets_in(text):
    key = key_from(text, {"step"}, "step")

    assert re.search(KEY, key)
    assert len(key) <= 60


@given(st.from_regex(KEY.removesuffix(r"(?![\s\S])"), fullmatch=True))
def test_a_skill_in_words_is_read_as_its_own_key(key):
    assert skill_key(skill_words(key)) == (key if len(key) <= 60 else "")


@pytest.mark.parametrize("text", ["", "\u6728", "!", "a" * 100_000])
def test_text_without_a_letter_is_no_skill(text):
    assert skill_key(text) == ""


def test_the_keys_of_a_recipe_are_those_that_something_may_refer_to():
    keys = set(own_keys(KNOB))

    assert {"collet", "part", "blank", "grit-240", "glue-dowel", "drill"} <= keys
    assert "parting_tool" not in keys
