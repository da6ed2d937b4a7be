"""What sounds in a change: its pitch ladder, its compass, and a sketch of it to listen to."""

from django.http import Http404, HttpRequest, HttpResponse, JsonResponse
from django.views.decorators.http import require_GET

from config.access import PLAYERS, allow
from config.pages import page
from registrations.charts import ladder
from registrations.compasschart import compass_charts
from registrations.ladder import ladder_of, rows
from registrations.listening import SECONDS, Offer, offers, sketch, sound_of
from registrations.queries import ChangeAt, load_change
from registrations.spectrum import Spectrum
from registrations.synthesis import wav_bytes

#: Samples a second of the file: half of the usual, for a quick answer.
RATE = 22_050


@require_GET
@allow(*PLAYERS)
def what_sounds(request: HttpRequest, pk: int) -> HttpResponse:
    at = load_change(pk)
    organ, drawn, music = at.registration.organ, at.value.combination, at.value.music
    found = ladder_of(organ, drawn, music)
    context = {
        "room": "week",
        "at": at,
        "ladder": ladder(tuple(one.column for one in found)),
        "headings": [one.heading for one in found],
        "rows": rows(found),
        "charts": compass_charts(organ, drawn, music),
        "offers": offers(found),
    }
    return page(request, "registrations/sounding.html", context, part="pictures")


@require_GET
@allow(*PLAYERS)
def partials(request: HttpRequest, pk: int) -> HttpResponse:
    offer, sound = _asked_for(request, load_change(pk))
    sines = [[round(one.hertz, 3), round(one.amplitude, 6)] for one in sketch(sound)]
    return JsonResponse({"plays": offer.words, "seconds": SECONDS, "partials": sines})


@require_GET
@allow(*PLAYERS)
def sketch_wav(request: HttpRequest, pk: int) -> HttpResponse:
    _, sound = _asked_for(request, load_change(pk))
    answer = HttpResponse(wav_bytes(sound, SECONDS, RATE), content_type="audio/wav")
    answer["Content-Disposition"] = 'inline; filename="sketch.wav"'
    return answer


def _asked_for(request: HttpRequest, at: ChangeAt) -> tuple[Offer, Spectrum]:
    """Give what the address asks to hear of a change, and its partials; 404 for anything else."""
    organ, drawn = at.registration.organ, at.value.combination
    asked = request.GET.get("keyboard", ""), request.GET.get("chord", "")
    for offer in offers(ladder_of(organ, drawn, at.value.music)):
        if (offer.keyboard, offer.playing) == asked:
            return offer, sound_of(organ, drawn, offer)
    raise Http404("Nothing sounds there now.")
