package boundwright.web;

import boundwright.quantity.RefusedException;
import boundwright.web.door.Reach;
import io.javalin.config.JettyConfig;
import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.ServerSocket;
import java.util.List;
import org.eclipse.jetty.server.HttpConfiguration;
import org.eclipse.jetty.server.HttpConnectionFactory;
import org.eclipse.jetty.server.SecureRequestCustomizer;
import org.eclipse.jetty.server.Server;
import org.eclipse.jetty.server.ServerConnector;
import org.eclipse.jetty.server.SslConnectionFactory;
import org.eclipse.jetty.server.handler.GracefulHandler;
import org.eclipse.jetty.util.ssl.SslContextFactory;
import org.jspecify.annotations.Nullable;

/** The sockets that the pages listen on. */
final class Listening {
  /** How long answers under way are waited for when the program closes; a sender who stalls is left behind after it. */
  private static final long FINISHING_MS = 2_000;
  /** How long a connection may then be silent; a browser keeps them open, and nobody waits a second for each. */
  private static final long SILENT_MS = 100;

  private final Reach reach;
  private final int port;
  private final int sealedPort;

  private Listening(Reach reach, int port, int sealedPort) {
    this.reach = reach;
    this.port = port;
    this.sealedPort = sealedPort;
  }

  /**
   * Tries all addresses first: the web library prints a stack trace when one fails.
   *
   * @param port 0 to 65535; 0 takes a free one
   */
  static Listening on(Reach reach, int port) {
    if (port < 0 || port > 65535 || (reach.https() && port == 65535)) {
      throw new RefusedException("Port " + port + " is out of range: 1 to " + (reach.https() ? "65534, since phones take the next one" : "65535") + ". The usual one is 7100.");
    }
    int open = tried(reach.listen(), port);
    int sealed = reach.https() ? tried(reach.listenSealed(), port == 0 ? 0 : port + 1) : 0;
    reach.opened(open, sealed);
    return new Listening(reach, open, sealed);
  }

  private static int tried(List<String> addresses, int port) {
    int found = port;
    for (String address : addresses) {
      found = tried(address, found);
    }
    return found;
  }

  private static int tried(String address, int port) {
    try (ServerSocket socket = new ServerSocket()) {
      socket.setReuseAddress(true);
      socket.bind(address.isEmpty() ? new InetSocketAddress(port) : new InetSocketAddress(InetAddress.getByName(address), port));
      return socket.getLocalPort();
    } catch (IOException e) {
      if (String.valueOf(e.getMessage()).contains("in use")) {
        throw inUse(port, e);
      }
      throw new RefusedException(
          "The pages cannot be opened on " + (address.isEmpty() ? "any address" : address) + ", port " + port
              + ". Use an address of this machine, for example --host 127.0.0.1 or --host all, and a port above 1023, for example --port 7100.",
          e);
    }
  }

  /** What is said when somebody took the port between the trial and the start. */
  RefusedException inUse(Exception e) {
    return inUse(port, e);
  }

  private static RefusedException inUse(int port, Exception e) {
    return new RefusedException(
        "Port " + port + " is in use, perhaps by another boundwright; close the other one or choose --port "
            + (port < 65535 ? port + 1 : port - 1) + ".",
        e);
  }

  /** Adds the sockets; {@code tls} is needed only with https. */
  void add(JettyConfig jetty, SslContextFactory.@Nullable Server tls) {
    // whoever is being answered while the program is closed gets the rest: a tap that is written is also said to be
    jetty.modifyServer(server -> {
      server.setHandler(new GracefulHandler());
      server.setStopTimeout(FINISHING_MS);
    });
    for (String address : reach.listen()) {
      jetty.addConnector((server, http) -> placed(new ServerConnector(server, new HttpConnectionFactory(http)), address, port));
    }
    if (tls != null) {
      for (String address : reach.listenSealed()) {
        jetty.addConnector((server, http) -> placed(sealed(server, http, tls), address, sealedPort));
      }
    }
  }

  private static ServerConnector sealed(Server server, HttpConfiguration http, SslContextFactory.Server tls) {
    HttpConfiguration own = new HttpConfiguration(http);
    // the door checks Host itself, exactly; no HSTS, since the same names answer over http on the port before
    own.addCustomizer(new SecureRequestCustomizer(false, false, -1, false));
    return new ServerConnector(server, new SslConnectionFactory(tls, "http/1.1"), new HttpConnectionFactory(own));
  }

  private static ServerConnector placed(ServerConnector connector, String address, int port) {
    connector.setHost(address.isEmpty() ? null : address);
    connector.setPort(port);
    connector.setShutdownIdleTimeout(SILENT_MS);
    return connector;
  }
}
