package boundwright.jump;

import boundwright.evidence.JumpSources;
import boundwright.evidence.Source;
import boundwright.evidence.Sources;
import boundwright.flight.ContactModel;

/** What the loss of forward speed in a contact is held to follow. */
public enum ContactForm {
  /** The vertical speed gained (Yu and Hay 1996; form from memory). */
  BY_GAIN("by the vertical speed gained", Sources.CONTACT_BY_GAIN),
  /** The vertical speed at take-off (Allen, King and Yeadon 2013; read). */
  BY_TAKE_OFF("by the vertical speed at take-off", Sources.CONTACT_BY_TAKE_OFF);

  private final String label;
  private final Source source;

  ContactForm(String label, Source source) {
    this.label = label;
    this.source = source;
  }

  /** In words for the coach. */
  public String label() {
    return label;
  }

  /** Where the form stood. */
  public Source source() {
    return source;
  }

  /** Where the first guess of the line's numbers comes from. */
  public Source priorSource() {
    return JumpSources.CONTACT_LEARNING;
  }

  /** What the loss follows in this contact [m/s]. */
  public double input(MeasuredContact c) {
    return input(c.touchdownVy(), c.takeOffVy());
  }

  double input(double touchdownVy, double takeOffVy) {
    return this == BY_GAIN ? takeOffVy - touchdownVy : takeOffVy;
  }

  /** The line with these two numbers. */
  public ContactModel line(double a0, double a1) {
    return this == BY_GAIN ? new ContactModel.ByGain(a0, a1) : new ContactModel.ByTakeOff(a0, a1);
  }
}
