"""Who may do what: each address (a URL name), its methods, and who may use them.

An address or a method that isn't here is refused. HEAD goes with GET.
"""

from __future__ import annotations

from club.base.roles import STAFF, Everyone, Role, Who

ANYONE = Everyone.ANYONE
SIGNED_IN = Everyone.SIGNED_IN
COORDINATOR = frozenset({Role.COORDINATOR})
CONDITION = frozenset({Role.COORDINATOR, Role.INSTRUCTOR, Role.HELPER, Role.SAFETY_OFFICER})
WRITERS = frozenset({Role.COORDINATOR, Role.INSTRUCTOR})
PREPARE = frozenset({Role.COORDINATOR, Role.INSTRUCTOR, Role.HELPER})
EXPORT = frozenset({Role.COORDINATOR, Role.INSTRUCTOR, Role.SAFETY_OFFICER})

# fmt: off
ROWS: tuple[tuple[str, str, Who], ...] = (
    # address                  methods     who
    ("home:start",             "GET",      ANYONE),
    ("home:card",              "GET",      ANYONE),  # the code on a lathe's card opens it
    ("home:cards",             "GET",      STAFF),
    ("home:cards_pdf",         "GET",      STAFF),
    ("home:project",           "GET",      STAFF),
    ("home:edition",           "GET",      STAFF),
    ("home:handout",           "GET",      STAFF),
    ("home:handout_pdf",       "GET",      STAFF),
    ("home:class_handouts",    "GET",      STAFF),
    ("home:class_handouts_pdf", "GET",     STAFF),
    ("home:class_handout",     "GET",      STAFF),
    ("home:class_handout_pdf", "GET",      STAFF),

    ("classes:list",           "GET",      STAFF),
    ("classes:new",            "GET POST", WRITERS),
    ("classes:class",          "GET",      STAFF),
    ("classes:done",           "POST",     PREPARE),
    ("classes:register",       "GET",      STAFF),
    ("classes:register_pdf",   "GET",      STAFF),
    ("classes:kit",            "GET",      STAFF),
    ("classes:order",          "GET",      STAFF),
    ("classes:order_pdf",      "GET",      STAFF),
    ("classes:mend",           "GET POST", WRITERS),
    ("classes:cancel",         "GET POST", WRITERS),
    ("classes:sign_up",        "GET POST", WRITERS),
    ("classes:seat",           "GET POST", WRITERS),
    ("classes:offer",          "GET POST", WRITERS),

    ("projects:list",          "GET",      STAFF),
    ("projects:woods",         "GET",      STAFF),
    ("projects:wood",          "GET",      STAFF),
    ("projects:finishes",      "GET",      STAFF),
    ("projects:new",           "GET POST", WRITERS),
    ("projects:draft",         "GET",      WRITERS),
    ("projects:draft_marks",   "GET POST", WRITERS),
    ("projects:draft_mend",    "GET POST", WRITERS),
    ("projects:draft_add",     "GET POST", WRITERS),
    ("projects:draft_take_out", "GET POST", WRITERS),
    ("projects:draft_move",    "POST",     WRITERS),
    ("projects:keep",          "GET POST", WRITERS),
    ("projects:throw_away",    "GET POST", WRITERS),
    ("projects:next_edition",  "POST",     WRITERS),
    ("projects:bring_in",      "GET POST", WRITERS),
    ("projects:take_away",     "GET",      STAFF),
    ("projects:edition_json",  "GET",      STAFF),
    ("projects:schema",        "GET",      STAFF),
    ("projects:difference",    "GET",      STAFF),
    ("projects:course",        "GET",      STAFF),
    ("projects:course_new",    "GET POST", WRITERS),
    ("projects:course_mend",   "GET POST", WRITERS),
    ("projects:course_delete", "GET POST", WRITERS),

    ("lathes:list",            "GET",      STAFF),
    ("lathes:lathe",           "GET",      STAFF),
    ("lathes:measuring",       "GET",      ANYONE),
    ("lathes:new",             "GET POST", COORDINATOR),
    ("lathes:mend",            "GET POST", COORDINATOR),
    ("lathes:condition",       "GET POST", CONDITION),
    ("lathes:import",          "GET POST", COORDINATOR),
    ("lathes:export",          "GET",      EXPORT),
    ("lathes:remove",          "GET POST", COORDINATOR),
    ("lathes:workshops",       "GET",      STAFF),
    ("lathes:workshop",        "GET",      STAFF),
    ("lathes:workshop_new",    "GET POST", COORDINATOR),
    ("lathes:workshop_mend",   "GET POST", COORDINATOR),

    ("stores:list",            "GET",      STAFF),
    ("stores:article",         "GET",      STAFF),
    ("stores:asked_for",       "GET",      STAFF),
    ("stores:suppliers",       "GET",      STAFF),
    ("stores:supplier",        "GET",      STAFF),
    ("stores:new",             "GET POST", WRITERS),
    ("stores:mend",            "GET POST", WRITERS),
    ("stores:remove",          "GET POST", WRITERS),
    ("stores:offer_new",       "GET POST", WRITERS),
    ("stores:offer_mend",      "GET POST", WRITERS),
    ("stores:offer_remove",    "GET POST", WRITERS),
    ("stores:held_new",        "GET POST", WRITERS),
    ("stores:held_mend",       "GET POST", WRITERS),
    ("stores:held_remove",     "GET POST", WRITERS),
    ("stores:meets_add",       "GET POST", WRITERS),
    ("stores:meets_new",       "GET POST", WRITERS),
    ("stores:meets_remove",    "GET POST", WRITERS),
    ("stores:supplier_new",    "GET POST", WRITERS),
    ("stores:supplier_mend",   "GET POST", WRITERS),
    ("stores:supplier_remove", "GET POST", WRITERS),

    ("people:sign_in",         "GET POST", ANYONE),
    ("people:sign_out",        "POST",     ANYONE),
    ("people:me",              "GET POST", SIGNED_IN),
    ("people:password",        "GET POST", SIGNED_IN),
    ("people:list",            "GET",      COORDINATOR),
    ("people:new",             "GET POST", COORDINATOR),
    ("people:person",          "GET",      COORDINATOR),
    ("people:mend",            "GET POST", COORDINATOR),
    ("people:give_role",       "GET POST", COORDINATOR),
    ("people:withdraw_role",   "GET POST", COORDINATOR),
    ("people:give_sign_in",    "GET POST", COORDINATOR),
    ("people:renew_password",  "GET POST", COORDINATOR),
    ("people:bar_sign_in",     "GET POST", COORDINATOR),
    ("people:open_sign_in",    "POST",     COORDINATOR),
)
# fmt: on

TABLE: dict[tuple[str, str], Who] = {
    (address, method): who for address, methods, who in ROWS for method in methods.split()
}
METHODS: dict[str, tuple[str, ...]] = {address: tuple(methods.split()) for address, methods, who in ROWS}
