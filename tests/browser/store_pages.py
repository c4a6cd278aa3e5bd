"""The pages of the stores in the states they have."""

from __future__ import annotations

from club.stores.models import Article
from tests.browser.samples import Sample, for_helper, wrong

WANTED = "kind=sheet&specification=Sandpaper+P100"
WRONG_OFFER = {"supplier": "", "label": "", "price": "free", "revision": "1"}
WRONG_SIZES = {"thickness": "thick", "width": "2 3/0 in", "length": ""}


def _each_kind(name: str, address: str, queries: int, row: str) -> tuple[Sample, ...]:
    """The same page for an article of each kind, since each asks for other things."""
    return tuple(
        Sample(f"{name}, {kind}", address, queries, f"{row}, {kind}") for kind in Article.Kind.values
    )


# fmt: off
STORES = (
    Sample("stores", "stores:list", 11),
    for_helper("stores, for a helper", "stores:list", 11),
    Sample("stores, narrowed down", "stores:list", 11, query="q=hornbeam&kind=blank&lacks=shelf"),
    Sample("stores, none fits", "stores:list", 9, query="q=nowhere"),
    *_each_kind("article", "stores:article", 9, "article"),
    Sample("article, bare", "stores:article", 9, "article, bare"),
    for_helper("article, for a helper", "stores:article", 9, "article, length_stock"),
    Sample("article, new", "stores:new", 3),
    Sample("article, new, of a kind", "stores:new", 3, query=WANTED),
    Sample("article, new, to be sawn", "stores:new", 3, query="kind=blank"),
    Sample("article, new, wrong", "stores:new", 4, query="kind=blank", typed={"name": "", "kerf": "wide"},
           status=422),
    Sample("article, mended", "stores:mend", 4, "article, length_stock"),
    wrong("article, mended, wrong", "stores:mend", 5, "article, piece", name="WHITE GLUE", revision="1"),
    wrong("article, mended, changed since", "stores:mend", 10, "article, piece", name="Rings", revision="0"),
    Sample("article removed", "stores:remove", 8, "article, length_stock"),
    wrong("article removed, changed since", "stores:remove", 12, "article, length_stock", revision="0"),
    *_each_kind("offer, new", "stores:offer_new", 5, "article"),
    wrong("offer, new, wrong", "stores:offer_new", 5, "article, blank", **WRONG_OFFER, **WRONG_SIZES),
    *_each_kind("offer, mended", "stores:offer_mend", 5, "offer"),
    wrong("offer, mended, wrong", "stores:offer_mend", 5, "offer, liquid", **WRONG_OFFER, holds="many"),
    Sample("offer removed", "stores:offer_remove", 5, "offer, length_stock"),
    wrong("offer removed, changed since", "stores:offer_remove", 8, "offer, length_stock", revision="0"),
    *_each_kind("held, new", "stores:held_new", 5, "article"),
    wrong("held, new, wrong", "stores:held_new", 5, "article, length_stock", amount="some", length="long",
          revision="1"),
    *_each_kind("held, counted anew", "stores:held_mend", 5, "held"),
    wrong("held, counted anew, wrong", "stores:held_mend", 5, "held, blank", amount="-3", moisture="wet",
          cut_for="Hornbeam 50 mm square", width="3 in", revision="1"),
    wrong("held, counted anew, changed since", "stores:held_mend", 9, "held, piece", amount="3",
          revision="0"),
    Sample("held removed", "stores:held_remove", 4, "held, length_stock"),
    wrong("held removed, changed since", "stores:held_remove", 8, "held, length_stock", revision="0"),
    Sample("asked for", "stores:asked_for", 5),
    for_helper("asked for, for a helper", "stores:asked_for", 5),
    Sample("article chosen", "stores:meets_add", 4, query=f"{WANTED}&next=/stores/"),
    Sample("article chosen, wrong", "stores:meets_add", 4, query=WANTED, typed={"article": ""}, status=422),
    Sample("what it meets", "stores:meets_new", 8, "article, sheet"),
    wrong("what it meets, wrong", "stores:meets_new", 8, "article, sheet", other=""),
    Sample("met no more", "stores:meets_remove", 4, "met, sheet"),
    Sample("suppliers", "stores:suppliers", 4),
    for_helper("suppliers, for a helper", "stores:suppliers", 4),
    Sample("supplier", "stores:supplier", 6, "supplier"),
    Sample("supplier, idle", "stores:supplier", 6, "supplier, idle"),
    Sample("supplier, new", "stores:supplier_new", 3),
    wrong("supplier, new, wrong", "stores:supplier_new", 4, name="sedge row TIMBER", delivery="1,250",
          least_order="", delivery_days="soon"),
    Sample("supplier, mended", "stores:supplier_mend", 4, "supplier"),
    wrong("supplier, mended, changed since", "stores:supplier_mend", 10, "supplier", name="Sedge",
          delivery="0", least_order="0", delivery_days="3", revision="0"),
    Sample("supplier removed", "stores:supplier_remove", 5, "supplier, idle"),
    Sample("supplier not removed", "stores:supplier_remove", 5, "supplier"),
    wrong("supplier removed, changed since", "stores:supplier_remove", 9, "supplier, idle", revision="0"),
)

EMPTY_STORES = (
    Sample("empty club, stores", "stores:list", 9),
    Sample("empty club, asked for", "stores:asked_for", 5),
    Sample("empty club, suppliers", "stores:suppliers", 4),
    Sample("empty club, article chosen", "stores:meets_add", 4, query=WANTED),
)
# fmt: on
