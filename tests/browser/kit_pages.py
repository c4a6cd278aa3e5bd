"""The pages of a class's kit and its order, in the states they have."""

from __future__ import annotations

from tests.browser.samples import Sample, for_helper

KIT = (
    Sample("kit", "classes:kit", 14, "class"),
    Sample("kit, after other classes", "classes:kit", 14, "class, over"),
    Sample("kit, past", "classes:kit", 14, "class, past"),
    for_helper("kit, for a helper", "classes:kit", 14, "class, full"),
    Sample("order", "classes:order", 14, "class"),
    Sample("order, after other classes", "classes:order", 14, "class, over"),
    Sample("order, on no paper", "classes:order_pdf", 14, "class", "paper=slate", status=422),
)
