"""The first page, a class's own, and what is printed of it, in the states they have."""

from __future__ import annotations

from tests.browser.samples import Sample, for_helper

# fmt: off
CLASS_PAGES = (
    Sample("start", "home:start", 20),
    for_helper("start, for a helper", "home:start", 20),
    Sample("class", "classes:class", 20, "class"),
    Sample("class, full", "classes:class", 20, "class, full"),
    Sample("class, over", "classes:class", 20, "class, over"),
    Sample("class, empty", "classes:class", 20, "class, empty"),
    Sample("class, cancelled", "classes:class", 20, "class, cancelled"),
    Sample("class, past", "classes:class", 20, "class, past"),
    for_helper("class, for a helper", "classes:class", 20, "class, full"),
    Sample("class list", "classes:register", 12, "class, over"),
    Sample("class list, empty", "classes:register", 12, "class, empty"),
    Sample("class list, on no paper", "classes:register_pdf", 12, "class", "paper=slate", status=422),
    Sample("handouts", "home:class_handouts", 12, "class, over"),
    Sample("handouts, empty", "home:class_handouts", 12, "class, empty"),
    Sample("handouts, cancelled", "home:class_handouts", 12, "class, cancelled"),
    Sample("handouts, of nobody", "home:class_handouts_pdf", 12, "class, empty", "paper=a4", status=422),
    Sample("handout of one", "home:class_handout", 12, "place"),
    Sample("handout of one, on no paper", "home:class_handout_pdf", 12, "place", "paper=slate", status=422),
)

EMPTY_CLASS_PAGES = (Sample("empty club, start", "home:start", 8),)
# fmt: on
