package easewright.rulebook;

import com.fasterxml.jackson.annotation.JsonProperty;
import java.util.List;
import java.util.Map;

/**
 * How wearers describe dangers to health and related circumstances: groups of words, and what
 * groups mean when they stand together. {@code rules/everyday/dangers} says how a pattern is
 * written.
 *
 * @param same short form or slang to the word meant
 * @param groups name to words and phrases; "..." leaves room for up to three words, and another
 *     group's name in angle brackets stands for all of its words
 * @param dangers id of a sign that is a red flag to its patterns
 * @param circumstances id of a circumstance to its patterns
 * @param lookAlikes phrases whose words mean nothing of the kind: figures of speech, machines,
 *     cloth
 * @param noDenial phrases that hold a "no" and deny nothing
 * @param denial phrases that say of what follows that it was feared or is over
 * @param readYourself patterns of words that may report a danger and that only a person can judge
 */
public record DangerWords(
    Map<String, String> same,
    Map<String, List<String>> groups,
    Map<String, List<String>> dangers,
    Map<String, List<String>> circumstances,
    @JsonProperty("look-alikes") List<String> lookAlikes,
    @JsonProperty("no denial") List<String> noDenial,
    List<String> denial,
    @JsonProperty("read yourself") List<String> readYourself) {}
