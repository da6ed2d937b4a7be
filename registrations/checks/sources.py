"""Sources: who says what the rules say. ``read`` marks those that were read for it."""

from registrations.checks.findings import Source

COMMON_PRACTICE = Source("Common practice, no source")
BY_CONSTRUCTION = Source("Follows from how the couplers of the organ are connected")
AUDSLEY_1921 = Source("G. A. Audsley, Organ-Stops and their Artistic Registration, 1921")
MILLER_1913 = Source(
    "G. L. Miller, The Recent Revolution in Organ Building, 2nd ed. 1913", read=True
)
BEDOS_1766 = Source(
    "Dom Bedos de Celles, L’Art du facteur d’orgues, 1766, part 1, art. 177", read=True
)
MIXTURE_ARTICLE = Source("Wikipedia, “Mixture (organ stop)”", read=True)
CONSOLE_ARTICLE = Source("Wikipedia, “Organ console”", read=True)
COMPOUND_PAGE = Source("Greifenberger Institut, “Compound stops” and “Freiberg”", read=True)
CHORUS_ARTICLE = Source("Encyclopaedia Britannica online, “Organ stops”", read=True)
AGO_GUIDE = Source("A guide of the American Guild of Organists", read=True)
COUPLER_ARTICLE = Source("E. J. Hopkins, “Coupler”, in Grove’s Dictionary, 1st ed.", read=True)
ORGAN_WIKIBOOK = Source("Wikibooks, on playing the organ", read=True)
TONE_MODEL = Source("The program’s own model of partials and strengths, assumed, not measured")
HELMHOLTZ_1863 = Source("H. Helmholtz, On the Sensations of Tone, 1863, transl. A. J. Ellis")
SETHARES_1993 = Source(
    "W. A. Sethares, Local consonance and the relationship between timbre and scale, J. Acoust. "
    "Soc. Am. 94, 1993, 1218"
)
