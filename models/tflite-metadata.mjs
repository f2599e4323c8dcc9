import { Builder } from 'flatbuffers';

/** File identifier of the metadata flatbuffer (TensorFlow Lite's metadata_schema.fbs). */
const METADATA_IDENTIFIER = 'M001';
const MIN_PARSER_VERSION = '1.0.0';

// Positions of the fields used here within their tables, and the number of fields each table has in version 1.0.0 of
// metadata_schema.fbs. A union takes two positions: the member's number first, then its table.
const MODEL = { fields: 8, name: 0, subgraphs: 3, minParserVersion: 7 };
const SUBGRAPH = { fields: 8, inputs: 2 };
const TENSOR = { fields: 7, name: 0, content: 3, processUnits: 4 };
const CONTENT = { fields: 3, propertiesType: 0, properties: 1 };
const IMAGE = { fields: 2, colourSpace: 0 };
const PROCESS_UNIT = { fields: 2, optionsType: 0, options: 1 };
const NORMALISATION = { fields: 2, mean: 0, std: 1 };
const OPTIONS_ARE_NORMALISATION = 1;
const PROPERTIES_ARE_IMAGE = 2;
const COLOUR_SPACE_RGB = 1;

/** Bytes of an offset and of a float32. */
const WORD = 4;

/**
 * Describes the one input of a model: an RGB picture, normalised as (pixel - mean) / std with pixel in 0..255.
 * PoseLandmarker refuses a float model that does not say this.
 * @param {{ readonly modelName: string, readonly mean: number, readonly std: number }} input
 * @returns {Uint8Array} a finished metadata flatbuffer, the same bytes for the same input
 */
export const imageInputMetadata = ({ modelName, mean, std }) => {
  const b = new Builder();
  // A flatbuffer is built from its leaves to its root; a table cannot be begun while another is open.
  const means = floats(b, [mean]);
  const stds = floats(b, [std]);
  b.startObject(NORMALISATION.fields);
  b.addFieldOffset(NORMALISATION.mean, means, 0);
  b.addFieldOffset(NORMALISATION.std, stds, 0);
  const normalisation = b.endObject();

  b.startObject(PROCESS_UNIT.fields);
  b.addFieldInt8(PROCESS_UNIT.optionsType, OPTIONS_ARE_NORMALISATION, 0);
  b.addFieldOffset(PROCESS_UNIT.options, normalisation, 0);
  const processUnits = offsets(b, [b.endObject()]);

  b.startObject(IMAGE.fields);
  b.addFieldInt8(IMAGE.colourSpace, COLOUR_SPACE_RGB, 0);
  const image = b.endObject();

  b.startObject(CONTENT.fields);
  b.addFieldInt8(CONTENT.propertiesType, PROPERTIES_ARE_IMAGE, 0);
  b.addFieldOffset(CONTENT.properties, image, 0);
  const content = b.endObject();

  const inputName = b.createString('image');
  b.startObject(TENSOR.fields);
  b.addFieldOffset(TENSOR.name, inputName, 0);
  b.addFieldOffset(TENSOR.content, content, 0);
  b.addFieldOffset(TENSOR.processUnits, processUnits, 0);
  const inputs = offsets(b, [b.endObject()]);

  b.startObject(SUBGRAPH.fields);
  b.addFieldOffset(SUBGRAPH.inputs, inputs, 0);
  const subgraphs = offsets(b, [b.endObject()]);

  const name = b.createString(modelName);
  const minParserVersion = b.createString(MIN_PARSER_VERSION);
  b.startObject(MODEL.fields);
  b.addFieldOffset(MODEL.name, name, 0);
  b.addFieldOffset(MODEL.subgraphs, subgraphs, 0);
  b.addFieldOffset(MODEL.minParserVersion, minParserVersion, 0);
  b.finish(b.endObject(), METADATA_IDENTIFIER);
  return b.asUint8Array();
};

/**
 * @param {Builder} b
 * @param {readonly number[]} values
 */
const floats = (b, values) => {
  b.startVector(WORD, values.length, WORD);
  for (const value of values.toReversed()) b.addFloat32(value);
  return b.endVector();
};

/**
 * @param {Builder} b
 * @param {readonly number[]} targets
 */
const offsets = (b, targets) => {
  b.startVector(WORD, targets.length, WORD);
  for (const target of targets.toReversed()) b.addOffset(target);
  return b.endVector();
};
