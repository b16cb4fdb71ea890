package easewright.access;

import io.vertx.core.net.SocketAddress;
import io.vertx.ext.web.RoutingContext;
import java.net.InetAddress;
import java.net.UnknownHostException;
import java.util.Arrays;
import java.util.HexFormat;

/**
 * Where a call comes from: an IPv4 address, or the first 64 bits of an IPv6 address, since whoever
 * has one of those has the rest (RFC 4291, section 2.5.4). Behind a proxy that is the proxy's,
 * unless {@code quarkus.http.proxy.proxy-address-forwarding} says to believe its headers.
 */
public final class ClientAddress {
  private static final int PREFIX_BYTES = 8;

  private ClientAddress() {}

  /** Where a call comes from; "" where that is not known. */
  public static String of(RoutingContext call) {
    SocketAddress from = call.request().remoteAddress();
    return from == null || from.hostAddress() == null ? "" : of(from.hostAddress());
  }

  /** The same of an address as text, bare of brackets. */
  public static String of(String address) {
    if (address.indexOf(':') < 0) {
      return address;
    }
    try {
      byte[] bytes = InetAddress.getByName(address).getAddress();
      return bytes.length <= 4
          ? InetAddress.getByAddress(bytes).getHostAddress()
          : HexFormat.of().formatHex(Arrays.copyOf(bytes, PREFIX_BYTES));
    } catch (UnknownHostException notAnAddress) {
      return "";
    }
  }
}
