"""The trusted part: the claims a line may stand on, and their proof.

In come a line and its claim, out comes a Certified line or Refused. Imports `equation`, `exact` and `mechanics` alone.
"""
