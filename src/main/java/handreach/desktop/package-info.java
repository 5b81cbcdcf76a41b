/**
 * The window: one {@link handreach.desktop.Session}, panes that listen to it and call its verbs, and a map.
 *
 * <p>What it is not: physics. Every number shown comes out of {@code study}, {@code reach}, {@code relay} or {@code walk}.
 *
 * <p>Rules of the room. The session lives on the screen thread alone. Every edit makes a new immutable plan. Work that may take
 * longer than a blink goes to {@link handreach.desktop.Worker}, which is handed values and hands values back; an answer that
 * is older than the question asked last is dropped. Panes never call each other.
 *
 * <p>Open problems: the live picture is drawn by the sweep engine also where a plan asks for the full-wave march, and says so.
 */
package handreach.desktop;
