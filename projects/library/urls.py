from __future__ import annotations

from django.urls import path

from projects.library.views import drafts, library, lifecycle, marks, new, spots, woods

app_name = "projects"

urlpatterns = [
    path("", library.project_list, name="list"),
    path("new/", new.new, name="new"),
    path("woods/", woods.wood_list, name="woods"),
    path("woods/<slug:key>/", woods.wood, name="wood"),
    path("finishes/", woods.finish_list, name="finishes"),
    path("<slug:key>/draft/", drafts.draft, name="draft"),
    path("<slug:key>/draft/marks/", marks.marks, name="draft_marks"),
    path("<slug:key>/draft/mend/", spots.mend, name="draft_mend"),
    path("<slug:key>/draft/add/", spots.add, name="draft_add"),
    path("<slug:key>/draft/take-out/", spots.take_out, name="draft_take_out"),
    path("<slug:key>/draft/move/", drafts.move, name="draft_move"),
    path("<slug:key>/next-edition/", lifecycle.next_edition, name="next_edition"),
    path("<slug:key>/draft/keep/", lifecycle.keep, name="keep"),
    path("<slug:key>/draft/throw-away/", lifecycle.throw_away, name="throw_away"),
]
