package easewright.access;

import io.vertx.core.net.SocketAddress;
import io.vertx.ext.web.RoutingContext;
import java.net.InetAddress;
import java.net.UnknownHostException;
import java.util.Arrays;
import java.util.HexFormat;

/**
 * The address that identifies a client: an IPv4 address, or the first 64 bits of an IPv6 address,
 * since a client controls the rest (RFC 4291, section 2.5.4). Behind a proxy this is the proxy's
 * address, unless {@code quarkus.http.proxy.proxy-address-forwarding} trusts its headers.
 */
public final class ClientAddress {
  private static final int PREFIX_BYTES = 8;

  private ClientAddress() {}

  /** The client address of a call; "" if unknown. */
  public static String of(RoutingContext call) {
    SocketAddress from = call.request().remoteAddress();
    return from == null || from.hostAddress() == null ? "" : of(from.hostAddress());
  }

  /** The same from an address as text, without brackets. */
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
