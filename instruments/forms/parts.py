from fractions import Fraction
from itertools import groupby
from typing import Any

from django import forms
from django.core.exceptions import ValidationError
from django.core.validators import RegexValidator

from instruments import models
from instruments.mixtures import Composition, composition_from_list, composition_to_list
from instruments.organ import COUPLING_WORDS
from instruments.pitch import LengthError, length_label, parse_length
from instruments.temperament import TEMPERAMENTS, find_temperament
from instruments.tone import Family
from instruments.zones import ZoneError, parse_zones, zones_text

MOST_ACCESSORIES = 200
LONGEST_NAME = 200


def _text(rows: int) -> forms.Textarea:
    return forms.Textarea(attrs={"rows": rows, "class": "short"})


class InstrumentForm(forms.ModelForm):
    temperament = forms.ChoiceField(required=False)
    another = forms.CharField(
        label="another temperament",
        max_length=80,
        required=False,
        help_text="Its name, where it is not in the list. Such a one sounds here as equal.",
    )
    accessories = forms.CharField(
        required=False, widget=_text(5), help_text="One a line: Zimbelstern, Nightingale."
    )
    coupling = forms.ChoiceField(
        label="How far couplers reach",
        widget=forms.RadioSelect,
        choices=[(one.value, words) for one, words in COUPLING_WORDS.items()],
    )
    notes = forms.CharField(
        max_length=8000,
        required=False,
        widget=_text(8),
        validators=[
            RegexValidator(
                r"\A[^\x00-\x08\x0b\x0c\x0e-\x1f\x7f]*\Z",
                "There is a character that cannot be printed.",
            )
        ],
        help_text="Builder and years, wind pressures, where the stop list comes from.",
    )

    class Meta:
        model = models.Instrument
        fields = ["name", "place", "pitch_hz", "temperament", "accessories", "coupling", "notes"]

    field_order = ["name", "place", "pitch_hz", "temperament", "another", "accessories", "notes"]

    def __init__(self, *args: Any, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        known = find_temperament(self.instance.temperament)
        self.fields["temperament"].choices = [  # type: ignore[attr-defined]
            *((one.name, one.name) for one in TEMPERAMENTS),
            ("", "another, named below"),
        ]
        self.initial["temperament"] = known.name if known else ""
        self.initial["another"] = "" if known else self.instance.temperament
        self.initial["accessories"] = "\n".join(self.instance.accessories)

    def clean_accessories(self) -> list[str]:
        lines = [line.strip() for line in self.cleaned_data["accessories"].splitlines()]
        names = [line for line in lines if line]
        if len(names) > MOST_ACCESSORIES or any(len(name) > LONGEST_NAME for name in names):
            raise ValidationError("At most 200 lines, and 200 letters in each.")
        return names

    def clean_notes(self) -> str:
        written: str = self.cleaned_data["notes"]
        return "\n".join(line.rstrip() for line in written.splitlines())

    def clean(self) -> dict[str, Any]:
        cleaned = super().clean() or self.cleaned_data
        cleaned["temperament"] = cleaned.get("temperament") or cleaned.get("another")
        if not cleaned["temperament"]:
            self.add_error("another", "Name the temperament, or choose one from the list.")
        return cleaned


class KeyboardForm(forms.ModelForm):
    class Meta:
        model = models.Keyboard
        fields = ["name", "kind", "compass"]
        help_texts = {"compass": "Lowest and highest key: C-g3, C-f1; C,D-c3 without bottom C♯."}


class DivisionForm(forms.ModelForm):
    class Meta:
        model = models.Division
        fields = ["name", "keyboard", "enclosed"]
        labels = {"keyboard": "played from", "enclosed": "In a swell box"}
        help_texts = {"keyboard": "Its home keyboard; a floating division has none."}

    def __init__(self, instrument: models.Instrument, *args: Any, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        keyboard: Any = self.fields["keyboard"]
        keyboard.queryset, keyboard.empty_label = instrument.keyboards.from_the_top(), "floating"


class StopForm(forms.ModelForm):
    zones = forms.CharField(
        label="Composition of a mixture",
        required=False,
        max_length=6000,
        widget=_text(4),
        help_text="From each key upward, one a line: C 19.22.26, then c 15.19.22. Feet do as well: "
        "c 2, 1 1/3, 1.",
    )
    speaking = forms.ChoiceField(
        label="Feet in the composition are",
        required=False,
        choices=[
            ("", "nominal: the length at bottom C"),
            ("yes", "real: the length of the pipe at that key"),
        ],
    )
    borrowed_from = forms.ChoiceField(label="Its pipes are those of", required=False)

    class Meta:
        model = models.Stop
        fields = [
            *("name", "division", "length", "ranks", "family", "construction", "compass", "half"),
            *("zones", "speaking", "borrowed_from", "rank"),
        ]
        labels = {"rank": "shared rank"}
        help_texts = {
            "length": "In feet: 8, 4, 2 2/3. Empty for a mixture.",
            "ranks": "How many speak at a key; a composition says it by itself.",
            "compass": "Only where it has fewer (or more) pipes than its keyboard: c-g3.",
            "half": "Of a stop that is divided at middle C.",
            "rank": "A name that all stops of one unit rank bear: Flute unit.",
        }

    def __init__(self, instrument: models.Instrument, *args: Any, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        half: Any = self.fields["half"]
        half.choices = [("", "whole"), *half.choices[1:]]
        self.fields["zones"].initial = zones_text(composition_from_list(self.instance.composition))
        lenders = list(
            instrument.stops.exclude(pk=self.instance.pk)
            .select_related("division")
            .order_by("division__position", "division", "position", "pk")
        )
        self.lenders = {one.slug: one.borrowed_from for one in lenders}
        self.fields["borrowed_from"].choices = [  # type: ignore[attr-defined]
            ("", "its own"),
            *(
                (division.name, [(one.slug, str(one)) for one in stops])
                for division, stops in groupby(lenders, key=lambda one: one.division)
            ),
        ]
        if self.instance.pk is None:
            del self.fields["division"]
        else:
            division: Any = self.fields["division"]
            division.queryset, division.empty_label = instrument.divisions.all(), None
            division.required = False

    def clean_division(self) -> models.Division:
        chosen: models.Division | None = self.cleaned_data["division"]
        return chosen or self.instance.division

    def clean_length(self) -> str:
        written: str = self.cleaned_data["length"]
        try:
            return length_label(parse_length(written)) if written else ""
        except LengthError as error:
            raise ValidationError(str(error)) from error

    def clean_borrowed_from(self) -> str:
        lender: str = self.cleaned_data["borrowed_from"]
        passed = {self.instance.slug}
        at = lender
        while at and at not in passed:
            passed.add(at)
            at = self.lenders.get(at, "")
        if at:
            raise ValidationError("That stop borrows from this one: one of them must have pipes.")
        return lender

    def clean(self) -> dict[str, Any]:
        cleaned = super().clean() or self.cleaned_data
        zones = self._zones(cleaned)
        self.instance.composition = composition_to_list(zones)
        if zones:
            cleaned["ranks"] = max(len(zone.lengths) for zone in zones)
        if self._says_no_pitch(cleaned, zones):
            self.add_error("length", "Give the length, or the composition of a mixture.")
        return cleaned

    def _zones(self, cleaned: dict[str, Any]) -> Composition:
        try:
            return parse_zones(cleaned.get("zones") or "", speaking=bool(cleaned.get("speaking")))
        except ZoneError as error:
            self.add_error("zones", str(error))
            return ()

    def _says_no_pitch(self, cleaned: dict[str, Any], zones: Composition) -> bool:
        refused = {"length", "zones"} & self.errors.keys()
        several = (cleaned.get("ranks") or 1) > 1
        struck = cleaned.get("family") == Family.PERCUSSION
        return not (refused or zones or several or struck or cleaned.get("length"))


class TremulantForm(forms.ModelForm):
    class Meta:
        model = models.Tremulant
        fields = ["name"]


class CouplerForm(forms.ModelForm):
    class Meta:
        model = models.Coupler
        fields = ["name", "source", "target", "octave", "unison_off"]
        labels = {"source": "carries", "target": "to the keyboard"}
        help_texts = {"unison_off": "It silences the division's own pitch instead of adding to it."}

    def __init__(self, instrument: models.Instrument, *args: Any, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        self.fields["source"].queryset = instrument.divisions.all()  # type: ignore[attr-defined]
        self.fields["target"].queryset = instrument.keyboards.all()  # type: ignore[attr-defined]


class FindStopsForm(forms.Form):
    """What is looked for among all stops of the house; nothing is required."""

    name = forms.CharField(max_length=100, required=False)
    length = forms.CharField(max_length=12, required=False, help_text="In feet: 8, 2 2/3.")
    family = forms.ChoiceField(
        required=False, choices=[("", "any"), *((one.value, one.value) for one in Family)]
    )
    division = forms.CharField(max_length=100, required=False, help_text="Great, Swell, Pedal.")

    def clean_length(self) -> Fraction | None:
        written: str = self.cleaned_data["length"]
        try:
            return parse_length(written) if written else None
        except LengthError as error:
            raise ValidationError(str(error)) from error
