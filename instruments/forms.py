from fractions import Fraction
from typing import Any

from django import forms
from django.core.exceptions import ValidationError

from instruments import models
from instruments.mixtures import (
    Zone,
    composition_from_list,
    composition_to_list,
    ordinals_label,
    parse_ordinals,
)
from instruments.pitch import LengthError, length_label, parse_length
from instruments.tone import Family

LONGEST_PASTE = 200_000


class PasteForm(forms.Form):
    text = forms.CharField(
        label="Stop list",
        strip=False,
        widget=forms.Textarea(attrs={"spellcheck": "false", "autocomplete": "off"}),
        help_text="As printed: headings, a stop a line, couplers and tremulants where they stand.",
    )
    name = forms.CharField(
        label="Name of the organ",
        max_length=200,
        required=False,
        help_text="Left empty, the first line is taken.",
    )


class InstrumentForm(forms.ModelForm):
    class Meta:
        model = models.Instrument
        fields = ["name", "place", "pitch_hz", "temperament", "coupling"]
        help_texts = {
            "coupling": "How far couplers reach: direct (most electric actions), octaves read "
            "through, or chained (most mechanical ones)."
        }


class DivisionForm(forms.ModelForm):
    class Meta:
        model = models.Division
        fields = ["name", "enclosed"]
        help_texts = {"enclosed": "It stands in a swell box."}


class StopForm(forms.ModelForm):
    counts = forms.CharField(
        label="Composition",
        max_length=60,
        required=False,
        help_text="Of a mixture at bottom C, in counts: 15.19.22.",
    )

    class Meta:
        model = models.Stop
        fields = ["name", "length", "ranks", "family", "construction", "compass", "half"]
        help_texts = {
            "length": "In feet: 8, 4, 2 2/3. Empty for a mixture.",
            "compass": "Only where it has fewer (or more) pipes than its keyboard: c-g3.",
        }

    def __init__(self, *args: Any, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        zones = composition_from_list(self.instance.composition)
        if zones:
            self.fields["counts"].initial = ordinals_label(zones[0].lengths)

    def clean_length(self) -> str:
        written: str = self.cleaned_data["length"]
        try:
            return length_label(parse_length(written)) if written else ""
        except LengthError as error:
            raise ValidationError(str(error)) from error

    def clean_counts(self) -> str:
        written: str = self.cleaned_data["counts"].strip()
        if written and not parse_ordinals(written):
            raise ValidationError("Write counts of the scale with dots between them: 15.19.22.")
        return written

    def clean(self) -> dict[str, Any]:
        cleaned = super().clean() or self.cleaned_data
        lengths = parse_ordinals(cleaned.get("counts") or "")
        if lengths and "counts" in self.changed_data:
            self.instance.composition = composition_to_list([Zone(0, lengths)])
            cleaned["ranks"] = len(lengths)
        elif not lengths:
            self.instance.composition = []
        if self._says_no_pitch(cleaned, lengths):
            self.add_error("length", "Give the length, or the composition of a mixture.")
        return cleaned

    def _says_no_pitch(self, cleaned: dict[str, Any], lengths: tuple[Fraction, ...]) -> bool:
        refused = {"length", "counts"} & self.errors.keys()
        pitched = lengths or cleaned.get("length") or cleaned.get("family") == Family.PERCUSSION
        return not refused and not pitched


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
