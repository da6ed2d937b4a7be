from django.urls import path

from services import views

urlpatterns = [
    path("services/new/", views.new_service, name="new_service"),
    path("services/add/", views.add_service, name="add_service"),
    path("services/<int:pk>/", views.service, name="service"),
    path("services/<int:pk>/facts/", views.service_facts, name="service_facts"),
    path("services/<int:pk>/change/", views.change_service, name="change_service"),
    path("services/<int:pk>/remove/", views.remove_service, name="remove_service"),
    path("services/<int:service_pk>/items/new/", views.new_item, name="new_item"),
    path("services/<int:service_pk>/items/add/", views.add_item, name="add_item"),
    path("items/<int:pk>/facts/", views.item_facts, name="item_facts"),
    path("items/<int:pk>/change/", views.change_item, name="change_item"),
    path("items/<int:pk>/move/", views.move_item, name="move_item"),
    path("items/<int:pk>/remove/", views.remove_item, name="remove_item"),
    path("pieces/", views.pieces, name="pieces"),
    path("pieces/new/", views.new_piece, name="new_piece"),
    path("pieces/add/", views.add_piece, name="add_piece"),
    path("pieces/<int:pk>/", views.piece_facts, name="piece_facts"),
    path("pieces/<int:pk>/change/", views.change_piece, name="change_piece"),
    path("pieces/<int:pk>/remove/", views.remove_piece, name="remove_piece"),
    path("people/", views.people, name="people"),
    path("people/add/", views.add_person, name="add_person"),
    path("people/<int:pk>/link/", views.make_sign_in_link, name="make_sign_in_link"),
]
