package easewright.intake;

import easewright.number.TextSpan;

/**
 * A question that the writer asks.
 *
 * @param kind "normal", "too", "need", "cause", "do", "how", "must", "again", "amount", "whole",
 *     "place", "sides", "first", "more", "enough", "test", "measure", "buy", "wear", "wait",
 *     "size", "act", "thing", "me", "posture", "mad", "save", "right", "doctor", "for-all",
 *     "outside" or "other"
 * @param about the direction of a size, such as "larger", or of an act, such as "closer", or the
 *     thing asked about, such as "cloth"; null where the kind says it all
 * @param span the words that ask it
 */
public record QuestionRead(String kind, String about, TextSpan span) {}
