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

/** What names and addresses the machine has that the service runs on. */
final class ThisMachine {
  /** So that no name is looked up: what matches is an address or nothing. */
  private static final Pattern ADDRESS =
      Pattern.compile("\\d{1,3}(?:\\.\\d{1,3}){3}|[0-9A-Fa-f.]*:[0-9A-Fa-f:.]*");

  /** What proxies add to a call they pass on (RFC 7239; RFC 9110, section 7.6.3; older habits). */
  private static final List<String> ADDED_BY_PROXIES =
      List.of("Forwarded", "Via", "X-Forwarded-For", "X-Forwarded-Host", "X-Real-IP");

  private ThisMachine() {}

  /** Whether a host reaches this machine from itself only (RFC 6761, section 6.3; RFC 6890). */
  static boolean isLoopback(String host) {
    return host.equalsIgnoreCase("localhost")
        || address(host).map(InetAddress::isLoopbackAddress).orElse(false);
  }

  /** Whether a host is this machine, without asking anybody what its name stands for. */
  static boolean is(String host) {
    return isLoopback(host) || address(host).map(ThisMachine::isOfAnInterface).orElse(false);
  }

  /**
   * Whether a call was made on this machine: by its loopback address, under a name of its own, and
   * not passed on by a proxy that says so. A page in a browser that had its own name point here
   * (DNS rebinding) asks under that name.
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
