package easewright.api;

import jakarta.inject.Singleton;
import java.net.URI;
import java.util.Optional;
import java.util.regex.Pattern;
import org.eclipse.microprofile.config.inject.ConfigProperty;

/**
 * Where links in a reply lead, since a reply is posted on boards where a path alone leads nowhere:
 * to {@code easewright.public-address}, else to the host as the asker called it. Behind a proxy
 * that host is the proxy's only if Quarkus is told to trust it (quarkus.http.proxy.*).
 */
@Singleton
public class PublicAddress {
  /** Nothing that could end a link in Markdown or HTML; the host is the caller's own word. */
  private static final Pattern SITE =
      Pattern.compile("https?://[A-Za-z0-9._~:\\[\\]-]+(/[A-Za-z0-9._~/-]*)?");

  private final Optional<String> address;

  PublicAddress(@ConfigProperty(name = "easewright.public-address") Optional<String> address) {
    this.address = address.map(PublicAddress::withoutSlash);
    this.address.ifPresent(
        site -> {
          if (!SITE.matcher(site).matches()) {
            throw new IllegalStateException(
                "easewright.public-address is to be like https://fit.example, not " + site + ".");
          }
        });
  }

  /** What stands before the path of a link; "" where nothing fit for a link is known. */
  public String site(URI calledAs) {
    return site(calledAs.toString());
  }

  /** The same for an address that may be none. */
  String site(String calledAs) {
    return address.orElseGet(
        () -> {
          String called = withoutSlash(calledAs);
          return SITE.matcher(called).matches() ? called : "";
        });
  }

  private static String withoutSlash(String address) {
    return address.endsWith("/") ? address.substring(0, address.length() - 1) : address;
  }
}
