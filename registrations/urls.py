from django.urls import path

from registrations.views import console, editor, guide, hearing, printing, removing, week

urlpatterns = [
    path("week/", week.this_week, name="this_week"),
    path("week/<day:day>/", week.week, name="week"),
    path("rules/", week.rules, name="rules"),
    path("items/<int:pk>/registration/", editor.item_registration, name="item_registration"),
    path(
        "items/<int:pk>/registration/begin/", editor.begin_registration, name="begin_registration"
    ),
    path("changes/<int:pk>/", editor.change, name="change"),
    path("changes/<int:pk>/remedies/", editor.ways_out, name="ways_out"),
    path("changes/<int:pk>/draw/", editor.draw_stop, name="draw_stop"),
    path("changes/<int:pk>/remedy/", editor.take_remedy, name="take_remedy"),
    path("changes/<int:pk>/accept/", editor.accept_finding, name="accept_finding"),
    path("changes/<int:pk>/take-back/", editor.take_acceptance_back, name="take_acceptance_back"),
    path("changes/<int:pk>/set/", editor.set_change, name="set_change"),
    path("changes/<int:pk>/add/", editor.add_change, name="add_change"),
    path("changes/<int:pk>/move/", editor.move_change, name="move_change"),
    path("changes/<int:pk>/remove/", editor.remove_change, name="remove_change"),
    path("changes/<int:pk>/sounding/", hearing.what_sounds, name="what_sounds"),
    path("changes/<int:pk>/partials.json", hearing.partials, name="partials"),
    path("changes/<int:pk>/sketch.wav", hearing.sketch_wav, name="sketch_wav"),
    path("services/<int:pk>/console/<int:step>/", console.console, name="console"),
    path("services/<int:pk>/cards.pdf", printing.service_cards, name="service_cards"),
    path("items/<int:pk>/card.pdf", printing.item_card, name="item_card"),
    path("organs/<int:pk>/guide/", guide.stop_guide, name="stop_guide"),
    path("organs/<int:pk>/guide/<path:stop>/", guide.guide_stop, name="guide_stop"),
    path("organs/<int:pk>/guide.pdf", printing.guide_sheets, name="guide_sheets"),
    path("parts/<str:kind>/<int:pk>/leaving/", removing.removing, name="removing"),
    path("print/", printing.print_page, name="print"),
]
