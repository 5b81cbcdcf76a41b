package handreach.report.file;

import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.PropertyNamingStrategies.NamingBase;
import com.fasterxml.jackson.databind.SerializationFeature;
import com.fasterxml.jackson.databind.SerializerProvider;
import com.fasterxml.jackson.databind.module.SimpleModule;
import com.fasterxml.jackson.databind.ser.std.StdSerializer;
import handreach.input.Unseen;
import java.io.IOException;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.OptionalLong;

/**
 * Results as JSON (RFC 8259): record components in snake case ({@code lossDb} becomes {@code loss_db}), an empty optional is
 * null, an enum its word, and a number that is not finite is a defect, never written.
 */
public final class Json {
    private static final ObjectMapper MAPPER = mapper();

    private Json() {}

    /** One value on indented lines, ended by a line feed; what steers a terminal stands in it as an escape. */
    public static String text(Object value) {
        try {
            return Unseen.escaped(MAPPER.writerWithDefaultPrettyPrinter().writeValueAsString(value)) + "\n";
        } catch (JsonProcessingException e) {
            throw new IllegalArgumentException("a result that cannot be written as JSON: " + e.getOriginalMessage(), e);
        }
    }

    /** The tree of a value, to be added to before it is written. */
    public static JsonNode tree(Object value) {
        return MAPPER.valueToTree(value);
    }

    /** The tree of JSON text that this program wrote. */
    static JsonNode parsed(String text) {
        try {
            return MAPPER.readTree(text);
        } catch (JsonProcessingException e) {
            throw new IllegalArgumentException("not JSON: " + e.getOriginalMessage(), e);
        }
    }

    /** Key of a component: {@code interval95Db} becomes {@code interval_95_db}; a single letter keeps its digits, as in p1812. */
    static String key(String component) {
        return component
                .replaceAll("(?<=[a-z0-9])(?=[A-Z])", "_")
                .replaceAll("(?<=[a-z]{2})(?=[0-9])", "_")
                .toLowerCase(Locale.ROOT);
    }

    private static ObjectMapper mapper() {
        SimpleModule module = new SimpleModule();
        module.addSerializer(Double.class, new FiniteNumber());
        module.addSerializer(double.class, new FiniteNumber());
        module.addSerializer(Optional.class, new OptionalValue());
        module.addSerializer(OptionalDouble.class, new OptionalDecimal());
        module.addSerializer(OptionalInt.class, new OptionalCount());
        module.addSerializer(OptionalLong.class, new OptionalLongCount());
        module.addSerializer(Enum.class, new Word());
        ObjectMapper mapper = new ObjectMapper();
        mapper.registerModule(module);
        mapper.setPropertyNamingStrategy(new SnakeCase());
        mapper.disable(SerializationFeature.FAIL_ON_EMPTY_BEANS);
        mapper.enable(DeserializationFeature.USE_BIG_DECIMAL_FOR_FLOATS);
        return mapper;
    }

    private static final class SnakeCase extends NamingBase {
        private static final long serialVersionUID = 1L;

        @Override
        public String translate(String name) {
            return key(name);
        }
    }

    private static final class FiniteNumber extends StdSerializer<Double> {
        private static final long serialVersionUID = 1L;

        FiniteNumber() {
            super(Double.class);
        }

        @Override
        public void serialize(Double value, JsonGenerator out, SerializerProvider provider) throws IOException {
            write(value, out);
        }

        static void write(double value, JsonGenerator out) throws IOException {
            if (!Double.isFinite(value)) throw new IllegalArgumentException("a number that is not finite: " + value);
            out.writeNumber(value == 0 ? 0.0 : value);
        }
    }

    @SuppressWarnings("rawtypes")
    private static final class OptionalValue extends StdSerializer<Optional> {
        private static final long serialVersionUID = 1L;

        OptionalValue() {
            super(Optional.class);
        }

        @Override
        public void serialize(Optional value, JsonGenerator out, SerializerProvider provider) throws IOException {
            provider.defaultSerializeValue(value.isPresent() ? value.get() : null, out);
        }

        /** So that a component can ask to be left out where there is nothing to say. */
        @Override
        public boolean isEmpty(SerializerProvider provider, Optional value) {
            return value.isEmpty();
        }
    }

    private static final class OptionalDecimal extends StdSerializer<OptionalDouble> {
        private static final long serialVersionUID = 1L;

        OptionalDecimal() {
            super(OptionalDouble.class);
        }

        @Override
        public void serialize(OptionalDouble value, JsonGenerator out, SerializerProvider p) throws IOException {
            if (value.isPresent()) FiniteNumber.write(value.getAsDouble(), out);
            else out.writeNull();
        }
    }

    private static final class OptionalCount extends StdSerializer<OptionalInt> {
        private static final long serialVersionUID = 1L;

        OptionalCount() {
            super(OptionalInt.class);
        }

        @Override
        public void serialize(OptionalInt value, JsonGenerator out, SerializerProvider p) throws IOException {
            if (value.isPresent()) out.writeNumber(value.getAsInt());
            else out.writeNull();
        }
    }

    private static final class OptionalLongCount extends StdSerializer<OptionalLong> {
        private static final long serialVersionUID = 1L;

        OptionalLongCount() {
            super(OptionalLong.class);
        }

        @Override
        public void serialize(OptionalLong value, JsonGenerator out, SerializerProvider p) throws IOException {
            if (value.isPresent()) out.writeNumber(value.getAsLong());
            else out.writeNull();
        }
    }

    @SuppressWarnings("rawtypes")
    private static final class Word extends StdSerializer<Enum> {
        private static final long serialVersionUID = 1L;

        Word() {
            super(Enum.class);
        }

        @Override
        public void serialize(Enum value, JsonGenerator out, SerializerProvider provider) throws IOException {
            out.writeString(value.name().toLowerCase(Locale.ROOT).replace('_', '-'));
        }
    }
}
