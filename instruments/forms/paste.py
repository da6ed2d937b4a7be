from django import forms


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
