from __future__ import annotations

from django.urls import path

from club.home import views

app_name = "home"

urlpatterns = [
    path("", views.start, name="start"),
    # Short, because it stands in a QR code and is typed from paper.
    path("l/<int:pk>/", views.card, name="card"),
    path("lathe-cards/", views.cards, name="cards"),
    path("lathe-cards/lathe-cards.pdf", views.cards_pdf, name="cards_pdf"),
]
