package handreach.desktop;

import javafx.beans.value.ObservableValue;
import javafx.scene.Node;

/**
 * One step of the person's way: what is asked, the answer in a line, and what there is to see and to set.
 *
 * @param asks the question
 * @param answer the answer as it stands, shown also while the step is folded
 * @param content what there is to see and to set
 */
record Question(String asks, ObservableValue<String> answer, Node content) {}
