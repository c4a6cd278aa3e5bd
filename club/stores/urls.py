from __future__ import annotations

from django.urls import path

from club.stores.views import articles, held, meets, offers, suppliers

app_name = "stores"

urlpatterns = [
    path("", articles.article_list, name="list"),
    path("new/", articles.new, name="new"),
    path("asked-for/", meets.asked_for, name="asked_for"),
    path("meets/", meets.add, name="meets_add"),
    path("suppliers/", suppliers.supplier_list, name="suppliers"),
    path("suppliers/new/", suppliers.new, name="supplier_new"),
    path("suppliers/<int:pk>/", suppliers.supplier, name="supplier"),
    path("suppliers/<int:pk>/mend/", suppliers.mend, name="supplier_mend"),
    path("suppliers/<int:pk>/remove/", suppliers.remove, name="supplier_remove"),
    path("<int:pk>/", articles.article, name="article"),
    path("<int:pk>/mend/", articles.mend, name="mend"),
    path("<int:pk>/remove/", articles.remove, name="remove"),
    path("<int:pk>/offers/new/", offers.new, name="offer_new"),
    path("<int:article_pk>/offers/<int:pk>/mend/", offers.mend, name="offer_mend"),
    path("<int:article_pk>/offers/<int:pk>/remove/", offers.remove, name="offer_remove"),
    path("<int:pk>/shelf/new/", held.new, name="held_new"),
    path("<int:article_pk>/shelf/<int:pk>/", held.mend, name="held_mend"),
    path("<int:article_pk>/shelf/<int:pk>/remove/", held.remove, name="held_remove"),
    path("<int:pk>/meets/", meets.of_article, name="meets_new"),
    path("<int:article_pk>/meets/<int:pk>/remove/", meets.remove, name="meets_remove"),
]
