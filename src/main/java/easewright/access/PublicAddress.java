package easewright.access;

import jakarta.inject.Singleton;
import java.net.URI;
import java.util.Optional;
import java.util.regex.Pattern;
import org.eclipse.microprofile.config.inject.ConfigProperty;

/**
 * The base address of links in a reply, which is posted on boards where a path alone leads nowhere:
 * {@code easewright.public-address}, or else this machine as the client addressed it. A host name
 * not known to be ours is the client's claim and is never linked to.
 */
@Singleton
public class PublicAddress {
  /** Excludes anything that could end a link in Markdown or HTML. */
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

  /** The part of a link before its path; "" if no usable address is known. */
  public String site(URI calledAs) {
    return site(calledAs.toString());
  }

  /** The same for an address that may be invalid. */
  public String site(String calledAs) {
    return address.orElseGet(
        () -> {
          String called = withoutSlash(calledAs);
          return SITE.matcher(called).matches() && ThisMachine.is(host(called)) ? called : "";
        });
  }

  /** Whether the public address has the given origin (RFC 6454, section 6.2). */
  public boolean isAt(String origin) {
    return address.map(site -> site.equals(origin) || site.startsWith(origin + "/")).orElse(false);
  }

  private static String host(String site) {
    try {
      String host = URI.create(site).getHost();
      return host == null ? "" : host;
    } catch (IllegalArgumentException none) {
      return "";
    }
  }

  private static String withoutSlash(String address) {
    return address.endsWith("/") ? address.substring(0, address.length() - 1) : address;
  }
}
