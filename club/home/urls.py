from __future__ import annotations

from django.urls import path

from club.home.views import cards, class_handouts, projects, start

app_name = "home"

urlpatterns = [
    path("", start.start, name="start"),
    # Short, because it stands in a QR code and is typed from paper.
    path("l/<int:pk>/", cards.card, name="card"),
    path("lathe-cards/", cards.cards, name="cards"),
    path("lathe-cards/lathe-cards.pdf", cards.cards_pdf, name="cards_pdf"),
    path("class/<int:pk>/handouts/", class_handouts.handouts, name="class_handouts"),
    path("class/<int:pk>/handouts.pdf", class_handouts.handouts_pdf, name="class_handouts_pdf"),
    path("class/<int:pk>/handout/<int:number>/", class_handouts.handout, name="class_handout"),
    path("class/<int:pk>/handout/<int:number>.pdf", class_handouts.handout_pdf, name="class_handout_pdf"),
    path("project/<slug:key>/", projects.project, name="project"),
    path("project/<slug:key>/<int:number>/", projects.edition, name="edition"),
    path("project/<slug:key>/<int:number>/handout/", projects.handout, name="handout"),
    path("project/<slug:key>/<int:number>/handout.pdf", projects.handout_pdf, name="handout_pdf"),
]
