from __future__ import annotations

from django.urls import path

from club.classes.views import class_page, kit, people, planning, register

app_name = "classes"

urlpatterns = [
    path("", planning.class_list, name="list"),
    path("new/", planning.new, name="new"),
    path("<int:pk>/", class_page.class_page, name="class"),
    path("<int:pk>/done/", class_page.done, name="done"),
    path("<int:pk>/list/", register.register, name="register"),
    path("<int:pk>/list.pdf", register.register_pdf, name="register_pdf"),
    path("<int:pk>/kit/", kit.kit, name="kit"),
    path("<int:pk>/order/", kit.order, name="order"),
    path("<int:pk>/order.pdf", kit.order_pdf, name="order_pdf"),
    path("<int:pk>/mend/", planning.mend, name="mend"),
    path("<int:pk>/cancel/", planning.cancel, name="cancel"),
    path("<int:pk>/sign-up/", people.sign_up, name="sign_up"),
    path("<int:pk>/people/<int:number>/", people.seat, name="seat"),
    path("<int:pk>/offer/", people.offer, name="offer"),
]
