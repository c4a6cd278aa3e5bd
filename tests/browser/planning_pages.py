"""The pages on which classes are planned and their lists kept, in the states they have."""

from __future__ import annotations

from tests.browser.samples import Sample, for_helper, wrong

WRONG_PLAN = {
    "day": "soon",
    "at": "half past",
    "minutes": "0",
    "sittings": "9",
    "minimum": "-1",
    "lowered_to": "many",
    "spares_rule": "count",
    "revision": "1",
}

BEGUN = "edition={edition}&workshop={workshop}"

# fmt: off
PLANNING = (
    Sample("classes", "classes:list", 8),
    for_helper("classes, for a helper", "classes:list", 8),
    Sample("class, new", "classes:new", 8),
    Sample("class, new, nothing chosen", "classes:new", 10, query="edition=0&workshop=0", status=422),
    Sample("class, new, begun", "classes:new", 14, query=BEGUN),
    Sample("class, new, wrong", "classes:new", 18, query=BEGUN, typed=WRONG_PLAN, status=422),
    Sample("class mended", "classes:mend", 20, "class"),
    wrong("class mended, wrong", "classes:mend", 24, "class", **WRONG_PLAN),
    Sample("class cancelled", "classes:cancel", 12, "class"),
    Sample("class planned again", "classes:cancel", 12, "class, cancelled"),
    wrong("class cancelled, changed since", "classes:cancel", 16, "class", revision="0"),
    Sample("sign-up", "classes:sign_up", 12, "class"),
    Sample("sign-up, full", "classes:sign_up", 12, "class, full"),
    Sample("sign-up, cancelled", "classes:sign_up", 12, "class, cancelled"),
    wrong("sign-up, wrong", "classes:sign_up", 14, "class", person="0", place="99z", until="soon"),
    Sample("place", "classes:seat", 16, "place"),
    wrong("place, wrong", "classes:seat", 16, "place", deed="move", place="99z"),
    Sample("place, waiting", "classes:seat", 16, "place, waiting"),
    Sample("place, given up", "classes:seat", 16, "place, given up"),
    Sample("place, cancelled", "classes:seat", 16, "place, cancelled"),
    Sample("offer, full", "classes:offer", 12, "class, full"),
    Sample("offer, nobody waits", "classes:offer", 12, "class"),
    Sample("offer", "classes:offer", 12, "class, offering"),
    wrong("offer, wrong", "classes:offer", 14, "class, offering", until="soon"),
)

EMPTY_PLANNING = (
    Sample("empty club, classes", "classes:list", 6),
    Sample("empty club, class new", "classes:new", 5),
)
# fmt: on
