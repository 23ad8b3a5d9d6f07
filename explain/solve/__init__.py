"""From a body to certified moves: goals, the board, the protocol of a rule, the engine, the answers.

Is handed its rules and imports none; composes no sentence.
"""
