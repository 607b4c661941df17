package boundwright.machine;

import java.net.InetAddress;
import java.net.URI;
import java.net.UnknownHostException;

/** Whether what is sent to an address can be read along on the way. */
public final class SafeAddress {
  private SafeAddress() {}

  /**
   * Whether nobody on the way to this address can read along.
   *
   * @param httpHere whether plain http to this machine itself is safe enough
   */
  public static boolean isSafe(URI address, boolean httpHere) {
    String scheme = String.valueOf(address.getScheme());
    return scheme.equalsIgnoreCase("https") || (httpHere && scheme.equalsIgnoreCase("http") && isHere(String.valueOf(address.getHost())));
  }

  private static boolean isHere(String host) {
    if (host.equals("localhost")) {
      return true;
    }
    try {
      return host.matches("[0-9.]+|\\[[0-9a-fA-F:.]+]") && InetAddress.getByName(host).isLoopbackAddress();
    } catch (UnknownHostException e) {
      return false;
    }
  }
}
