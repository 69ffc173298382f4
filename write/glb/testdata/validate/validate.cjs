// What the Khronos Group's glTF validator says of GLB files: names in, JSON out.
const fs = require("fs");
const { validateBytes } = require("gltf-validator");

Promise.all(process.argv.slice(2).map((name) => validateBytes(new Uint8Array(fs.readFileSync(name)))))
  .then((answers) => console.log(JSON.stringify(answers)))
  .catch((err) => { console.error(err); process.exit(1); });
