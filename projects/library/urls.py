from __future__ import annotations

from django.urls import path

from projects.library.views import courses, drafts, exchange, library, lifecycle, marks, new, spots, woods

app_name = "projects"

urlpatterns = [
    path("", library.project_list, name="list"),
    path("new/", new.new, name="new"),
    path("woods/", woods.wood_list, name="woods"),
    path("finishes/", woods.finish_list, name="finishes"),
    path("bring-in/", exchange.bring_in, name="bring_in"),
    path("library.json", exchange.take_away, name="take_away"),
    path("schemas/<slug:form>.json", exchange.schema, name="schema"),
    path("courses/new/", courses.new, name="course_new"),
    path("<slug:key>/draft/", drafts.draft, name="draft"),
    path("<slug:key>/draft/marks/", marks.marks, name="draft_marks"),
    path("<slug:key>/draft/mend/", spots.mend, name="draft_mend"),
    path("<slug:key>/draft/add/", spots.add, name="draft_add"),
    path("<slug:key>/draft/take-out/", spots.take_out, name="draft_take_out"),
    path("<slug:key>/draft/move/", drafts.move, name="draft_move"),
    path("<slug:key>/next-edition/", lifecycle.next_edition, name="next_edition"),
    path("<slug:key>/draft/keep/", lifecycle.keep, name="keep"),
    path("<slug:key>/draft/throw-away/", lifecycle.throw_away, name="throw_away"),
    path("<slug:key>/<int:number>/edition.json", exchange.edition_json, name="edition_json"),
    path("<slug:key>/<int:older>/to/<int:newer>/", exchange.difference, name="difference"),
    # Behind the drafts: a project may be called woods or courses as well.
    path("woods/<slug:key>/", woods.wood, name="wood"),
    path("courses/<slug:key>/", courses.course, name="course"),
    path("courses/<slug:key>/mend/", courses.mend, name="course_mend"),
    path("courses/<slug:key>/delete/", courses.delete, name="course_delete"),
]
