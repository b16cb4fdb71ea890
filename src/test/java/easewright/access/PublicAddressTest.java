package easewright.access;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.net.URI;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** Base address of links; addresses follow RFC 3986. */
class PublicAddressTest {
  private static final URI CALLED = URI.create("http://localhost:8080/");

  @Test
  void a_public_address_is_the_base_of_every_link_with_or_without_its_last_slash() {
    for (String set : List.of("https://fit.example/help", "https://fit.example/help/")) {
      assertEquals(
          "https://fit.example/help", new PublicAddress(Optional.of(set)).site(CALLED), set);
    }
  }

  @Test
  void without_one_links_lead_to_the_host_as_it_was_called() {
    PublicAddress none = new PublicAddress(Optional.empty());
    assertEquals("http://localhost:8080", none.site(CALLED));
    assertEquals("http://[::1]:8080", none.site(URI.create("http://[::1]:8080/")));
  }

  @Test
  void a_host_that_could_end_a_link_is_left_out() {
    PublicAddress none = new PublicAddress(Optional.empty());
    assertEquals("", none.site(URI.create("http://a.example(x)/")));
    assertEquals("", none.site(URI.create("http://u@a.example/")));
  }

  @Test
  void an_invalid_public_address_prevents_start_up() {
    for (String set : List.of("fit.example", "ftp://fit.example", "https://fit.example/?q")) {
      Optional<String> address = Optional.of(set);
      assertThrows(IllegalStateException.class, () -> new PublicAddress(address), set);
    }
  }
}
