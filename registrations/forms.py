from typing import Any

from django import forms

from instruments.organ import KeyboardKind, Organ
from registrations import models


class ChangeForm(forms.ModelForm):
    class Meta:
        model = models.Change
        fields = ["cue", "right", "left", "feet", "texture", "solo", "note"]

    def __init__(self, organ: Organ, *args: Any, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        manuals = [(one.id, one.name) for one in organ.keyboards if one.kind is KeyboardKind.MANUAL]
        pedals = [(one.id, one.name) for one in organ.keyboards if one.kind is KeyboardKind.PEDAL]
        for player, keyboards in (("right", manuals), ("left", manuals), ("feet", pedals)):
            label = self.fields[player].label
            self.fields[player] = forms.ChoiceField(
                label=label, required=False, choices=[("", "not said"), *keyboards]
            )


class CueForm(forms.ModelForm):
    class Meta:
        model = models.Change
        fields = ["cue"]


class AcceptanceForm(forms.ModelForm):
    class Meta:
        model = models.Acceptance
        fields = ["reason"]
        error_messages = {
            "reason": {"required": "Write why it is meant, so that others know it too."}
        }
