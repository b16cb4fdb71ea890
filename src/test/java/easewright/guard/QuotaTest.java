package easewright.guard;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import easewright.access.ClientAddress;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Counts, and which addresses count as one client (RFC 4291, sections 2.5.4 and 2.5.5.2). */
class QuotaTest {
  @Test
  void each_client_has_its_own_quota() {
    Quota quota = new Quota("openings", "2 in 1H");
    assertTrue(quota.count("a").isConsumed());
    assertTrue(quota.count("a").isConsumed());
    assertFalse(quota.count("a").isConsumed());
    assertTrue(quota.count("a").getNanosToWaitForRefill() > 0);
    assertTrue(quota.count("b").isConsumed());
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "2", "2 in", "in 1H", "two in 1H", "2 in 1 hour"})
  void what_is_not_so_written_keeps_the_service_from_starting(String written) {
    assertThrows(RuntimeException.class, () -> new Quota("openings", written));
  }

  @Test
  void an_ipv6_network_is_one_client_and_so_is_an_ipv4_address() {
    assertEquals(ClientAddress.of("2001:db8:1:2::1"), ClientAddress.of("2001:db8:1:2:ffff::9"));
    assertNotEquals(ClientAddress.of("2001:db8:1:2::1"), ClientAddress.of("2001:db8:1:3::1"));
    assertEquals("192.0.2.7", ClientAddress.of("192.0.2.7"));
    assertEquals(ClientAddress.of("192.0.2.7"), ClientAddress.of("::ffff:192.0.2.7"));
    assertNotEquals(ClientAddress.of("192.0.2.7"), ClientAddress.of("192.0.2.8"));
  }
}
