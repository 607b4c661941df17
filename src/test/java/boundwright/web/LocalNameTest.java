package boundwright.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import boundwright.quantity.RefusedException;
import boundwright.web.door.LocalName;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.net.DatagramPacket;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.MulticastSocket;
import java.net.NetworkInterface;
import java.net.SocketTimeoutException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;

/**
 * Asked with a datagram written by hand after RFC 6762, 5.2: from port 5353, with the answer to everybody, as the resolvers of phones do.
 * A one-shot question from another port (6.7) is answered to everybody too, not to that port: a limit of the library.
 */
class LocalNameTest {
  @Test
  void aPhoneThatAsksForTheNameGetsTheAddress() throws IOException {
    String address = Network.address();
    try (LocalName name = LocalName.answer("boundwright-trial", List.of(address))) {
      Assumptions.assumeFalse(name.name().isEmpty(), "this network carries no multicast");
      assertThat(name.name()).isEqualTo("boundwright-trial.local");
      assertThat(ask("boundwright-trial", address)).hasValue(address);
      assertThat(ask("somebody-else", address)).isEmpty();
    }
  }

  private static Optional<String> ask(String name, String from) throws IOException {
    ByteArrayOutputStream question = new ByteArrayOutputStream();
    question.write(new byte[] {0, 7, 0, 0, 0, 1, 0, 0, 0, 0, 0, 0});
    for (String label : new String[] {name, "local"}) {
      question.write(label.length());
      question.write(label.getBytes(StandardCharsets.US_ASCII));
    }
    question.write(new byte[] {0, 0, 1, 0, 1});
    String wanted = new String(InetAddress.getByName(from).getAddress(), StandardCharsets.ISO_8859_1);
    NetworkInterface by = NetworkInterface.getByInetAddress(InetAddress.getByName(from));
    InetSocketAddress everybody = new InetSocketAddress("224.0.0.251", 5353);
    try (MulticastSocket socket = new MulticastSocket(5353)) {
      socket.setNetworkInterface(by);
      socket.joinGroup(everybody, by);
      socket.setSoTimeout(2_000);
      socket.send(new DatagramPacket(question.toByteArray(), question.size(), everybody));
      for (int heard = 0; heard < 50; heard++) {
        byte[] in = new byte[1500];
        DatagramPacket packet = new DatagramPacket(in, in.length);
        socket.receive(packet);
        String said = new String(in, 0, packet.getLength(), StandardCharsets.ISO_8859_1);
        boolean answer = (in[2] & 0x80) != 0;
        if (answer && said.contains(name) && said.contains(wanted)) {
          return Optional.of(from);
        }
      }
      return Optional.empty();
    } catch (SocketTimeoutException silence) {
      return Optional.empty();
    }
  }

  @Test
  void aNameThatNoNetworkTakesIsRefused() {
    assertThat(LocalName.checked("Runway.local")).isEqualTo("runway");
    for (String bad : List.of("", "-x", "two words", "ü", "x".repeat(64), "a.b")) {
      assertThatThrownBy(() -> LocalName.checked(bad)).as(bad).isInstanceOf(RefusedException.class).hasMessageContaining("letters, digits and hyphens");
    }
  }
}
