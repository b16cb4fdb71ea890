package easewright.clinic;

import java.time.Instant;

/**
 * A valid key, without its secret.
 *
 * @param name whom it was issued to
 * @param caseId the case a wearer's link leads to; null for others
 */
public record KeyEntry(String id, Role role, String name, String caseId, Instant issuedAt) {}
