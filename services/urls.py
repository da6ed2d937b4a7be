from django.urls import path

from services.views import items, people, pieces, services

urlpatterns = [
    path("services/new/", services.new_service, name="new_service"),
    path("services/add/", services.add_service, name="add_service"),
    path("services/<int:pk>/", services.service, name="service"),
    path("services/<int:pk>/facts/", services.service_facts, name="service_facts"),
    path("services/<int:pk>/change/", services.change_service, name="change_service"),
    path("services/<int:pk>/remove/", services.remove_service, name="remove_service"),
    path("services/<int:service_pk>/items/new/", items.new_item, name="new_item"),
    path("services/<int:service_pk>/items/add/", items.add_item, name="add_item"),
    path("items/<int:pk>/facts/", items.item_facts, name="item_facts"),
    path("items/<int:pk>/change/", items.change_item, name="change_item"),
    path("items/<int:pk>/move/", items.move_item, name="move_item"),
    path("items/<int:pk>/remove/", items.remove_item, name="remove_item"),
    path("pieces/", pieces.pieces, name="pieces"),
    path("pieces/new/", pieces.new_piece, name="new_piece"),
    path("pieces/add/", pieces.add_piece, name="add_piece"),
    path("pieces/<int:pk>/", pieces.piece_facts, name="piece_facts"),
    path("pieces/<int:pk>/change/", pieces.change_piece, name="change_piece"),
    path("pieces/<int:pk>/remove/", pieces.remove_piece, name="remove_piece"),
    path("people/", people.people, name="people"),
    path("people/add/", people.add_person, name="add_person"),
    path("people/<int:pk>/link/", people.make_sign_in_link, name="make_sign_in_link"),
]
