from collections.abc import Iterator
from typing import Any

from django import forms

from instruments import models
from instruments.consoles import PANEL_WORDS, Panel, Piston, PistonKind, Place, piston_fault
from instruments.jamb import Knob, knobs
from instruments.organ import Organ

MOST_AT_ONCE = 40
PANELS = [("", "nobody has said"), *((one.value, PANEL_WORDS[one]) for one in Panel)]


class ConsoleForm(forms.ModelForm):
    knobs_move = forms.TypedChoiceField(
        label="When a piston is pressed",
        required=False,
        choices=[
            ("", "nobody has said"),
            ("yes", "the controls move"),
            ("no", "the controls stay where they are"),
        ],
        coerce=lambda word: word == "yes",
        empty_value=None,
    )

    class Meta:
        model = models.Instrument
        fields = ["knobs_move", "levels", "sequencer"]
        help_texts = {
            "levels": "How many memories the pistons have; 0 without a memory.",
            "sequencer": "The console steps through its generals by one piston.",
        }

    def __init__(self, *args: Any, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        words = {True: "yes", False: "no", None: ""}
        self.initial["knobs_move"] = words[self.instance.knobs_move]


class PistonForm(forms.ModelForm):
    control = forms.ChoiceField(
        label="of a reversible: the control it moves", required=False, help_text="In and out."
    )
    several = forms.IntegerField(
        label="How many",
        min_value=1,
        max_value=MOST_AT_ONCE,
        initial=1,
        help_text="Several get numbers behind the name: General 1, General 2.",
    )

    class Meta:
        model = models.Piston
        fields = ["name", "kind", "division", "control", "touch", "several"]
        labels = {"division": "of a divisional: its division", "touch": "pressed by"}

    def __init__(self, organ: Organ, row: models.Instrument, *args: Any, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        division: Any = self.fields["division"]
        division.queryset, division.empty_label = row.divisions.all(), "none"
        self.fields["control"].choices = [  # type: ignore[attr-defined]
            ("", "none"),
            *((knob.id, knob.label) for knob in knobs(organ)),
        ]
        if self.instance.pk is not None:
            del self.fields["several"]

    def clean(self) -> dict[str, Any]:
        cleaned = super().clean() or self.cleaned_data
        if {"kind", "division", "control"} <= cleaned.keys():
            kind, division, control = (cleaned[one] for one in ("kind", "division", "control"))
            named = division.slug if division else None
            fault = piston_fault(
                Piston("new", "new", PistonKind(kind), division=named, control=control or None)
            )
            if fault:
                self.add_error("kind", fault)
        return cleaned


class PlacesForm(forms.Form):
    """Where every control of an organ stands: three fields for each."""

    def __init__(self, organ: Organ, *args: Any, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        self.knobs = knobs(organ)
        self.kept = {one.control: one for one in organ.console.places}
        for knob in self.knobs:
            place = self.kept.get(knob.id)
            self.fields[f"panel:{knob.id}"] = forms.ChoiceField(
                required=False,
                choices=PANELS,
                initial=place.panel if place else "",
                widget=forms.Select(attrs={"aria-label": f"Panel: {knob.label}"}),
            )
            for word, number in (
                ("column", place and place.column),
                ("row", place and place.row),
            ):
                self.fields[f"{word}:{knob.id}"] = forms.IntegerField(
                    required=False,
                    min_value=1,
                    max_value=99,
                    initial=number,
                    widget=forms.TextInput(
                        attrs={
                            "inputmode": "numeric",
                            "size": 2,
                            "aria-label": f"{word.capitalize()}: {knob.label}",
                        }
                    ),
                )

    def lines(self) -> Iterator[dict[str, Any]]:
        """Give each control with its three fields and what is wrong with them."""
        for knob in self.knobs:
            fields = [self[f"{word}:{knob.id}"] for word in ("panel", "column", "row")]
            errors = [error for field in fields for error in field.errors]
            yield {"knob": knob, "fields": fields, "errors": errors}

    def clean(self) -> dict[str, Any]:
        cleaned = super().clean() or self.cleaned_data
        taken: dict[tuple[str, int, int], Knob] = {}
        for knob in self.knobs:
            place = self._place(knob)
            if place is None:
                continue
            spot = (place.panel, place.column, place.row)
            if spot in taken:
                self.add_error(f"row:{knob.id}", f"{taken[spot].label} stands there.")
            taken.setdefault(spot, knob)
        return cleaned

    def _place(self, knob: Knob) -> Place | None:
        names = [f"{word}:{knob.id}" for word in ("panel", "column", "row")]
        if names[0] not in self.data:
            return self.kept.get(knob.id)
        if self.errors.keys() & set(names):
            return None
        panel, column, row = (self.cleaned_data.get(name) for name in names)
        if panel and column and row:
            return Place(knob.id, Panel(panel), column, row)
        if column or row or panel:
            self.add_error(names[0], "Give the panel, the column and the row, or none of them.")
        return None

    def places(self) -> list[Place]:
        """Give the places that were filled in; only of a form that is valid."""
        found = (self._place(knob) for knob in self.knobs)
        return [place for place in found if place is not None]
