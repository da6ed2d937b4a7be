from django.urls import path

from instruments.views import changes, pages

urlpatterns = [
    path("organs/", pages.organs, name="organs"),
    path("organs/new/", pages.new_organ, name="new_organ"),
    path("organs/read/", pages.read_organ, name="read_organ"),
    path("organs/keep/", pages.keep_organ, name="keep_organ"),
    path("organs/<int:pk>/", pages.instrument, name="instrument"),
    path("organs/<int:pk>/organ.json", pages.organ_file, name="organ_file"),
    path("organs/<int:pk>/parts/", changes.instrument_parts, name="instrument_parts"),
    path("organs/<int:pk>/facts/", changes.instrument_facts, name="instrument_facts"),
    path("organs/<int:pk>/change/", changes.change_instrument, name="change_instrument"),
    path("organs/<int:pk>/couplers/new/", changes.new_coupler, name="new_coupler"),
    path("organs/<int:pk>/couplers/add/", changes.add_coupler, name="add_coupler"),
    path("couplers/<int:pk>/remove/", changes.remove_coupler, name="remove_coupler"),
    path("divisions/<int:pk>/facts/", changes.division_facts, name="division_facts"),
    path("divisions/<int:pk>/change/", changes.change_division, name="change_division"),
    path("divisions/<int:division_pk>/stops/new/", changes.new_stop, name="new_stop"),
    path("divisions/<int:division_pk>/stops/add/", changes.add_stop, name="add_stop"),
    path(
        "divisions/<int:division_pk>/tremulants/add/", changes.add_tremulant, name="add_tremulant"
    ),
    path("tremulants/<int:pk>/remove/", changes.remove_tremulant, name="remove_tremulant"),
    path("stops/<int:pk>/facts/", changes.stop_facts, name="stop_facts"),
    path("stops/<int:pk>/change/", changes.change_stop, name="change_stop"),
    path("stops/<int:pk>/move/", changes.move_stop, name="move_stop"),
    path("stops/<int:pk>/remove/", changes.remove_stop, name="remove_stop"),
]
