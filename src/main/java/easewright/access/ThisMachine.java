package easewright.access;

import io.vertx.core.http.HttpServerRequest;
import io.vertx.core.net.HostAndPort;
import io.vertx.core.net.SocketAddress;
import java.net.InetAddress;
import java.net.NetworkInterface;
import java.net.SocketException;
import java.net.UnknownHostException;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;

/** Recognises names and addresses of the machine that the service runs on. */
final class ThisMachine {
  /** Matches only addresses, so that no name is ever looked up. */
  private static final Pattern ADDRESS =
      Pattern.compile("\\d{1,3}(?:\\.\\d{1,3}){3}|[0-9A-Fa-f.]*:[0-9A-Fa-f:.]*");

  /**
   * Headers that proxies add to a call they forward (RFC 7239; RFC 9110, section 7.6.3; older
   * habits).
   */
  private static final List<String> ADDED_BY_PROXIES =
      List.of("Forwarded", "Via", "X-Forwarded-For", "X-Forwarded-Host", "X-Real-IP");

  private ThisMachine() {}

  /** Whether a host is a loopback address (RFC 6761, section 6.3; RFC 6890). */
  static boolean isLoopback(String host) {
    return host.equalsIgnoreCase("localhost")
        || address(host).map(InetAddress::isLoopbackAddress).orElse(false);
  }

  /** Whether a host is this machine, without a DNS lookup. */
  static boolean is(String host) {
    return isLoopback(host) || address(host).map(ThisMachine::isOfAnInterface).orElse(false);
  }

  /**
   * Whether a call was made on this machine: through its loopback address, under one of its own
   * names, and without a proxy's headers. This excludes DNS rebinding, where a page calls under its
   * own name.
   */
  static boolean sent(HttpServerRequest call) {
    SocketAddress from = call.remoteAddress();
    HostAndPort host = call.authority();
    return from != null
        && from.hostAddress() != null
        && isLoopback(from.hostAddress())
        && host != null
        && isLoopback(host.host())
        && ADDED_BY_PROXIES.stream().noneMatch(call.headers()::contains);
  }

  private static Optional<InetAddress> address(String host) {
    String bare = host.replaceAll("^\\[|]$", "");
    try {
      return ADDRESS.matcher(bare).matches()
          ? Optional.of(InetAddress.getByName(bare))
          : Optional.empty();
    } catch (UnknownHostException none) {
      return Optional.empty();
    }
  }

  private static boolean isOfAnInterface(InetAddress address) {
    try {
      return !address.isAnyLocalAddress() && NetworkInterface.getByInetAddress(address) != null;
    } catch (SocketException unknown) {
      return false;
    }
  }
}
